using MathNet.Numerics.LinearAlgebra;

namespace SectionScan.Metrology.Cameras;

/// <summary>Between rows of numbers, as documents keep them, and matrices.</summary>
internal static class Matrices
{
    /// <summary>A copy of the rows as a matrix.</summary>
    public static Matrix<double> Of(IReadOnlyList<IReadOnlyList<double>> rows) =>
        Matrix<double>.Build.Dense(rows.Count, rows[0].Count, (i, j) => rows[i][j]);
}
