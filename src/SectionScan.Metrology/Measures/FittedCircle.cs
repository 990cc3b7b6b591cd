using MathNet.Numerics.LinearAlgebra;
using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Measures;

/// <summary>The circle that fits points best.</summary>
/// <param name="Centre">Its centre, mm.</param>
/// <param name="RadiusMm">Its radius, mm.</param>
/// <param name="ResidualRmsMm">The root mean square distance of the points from it, weighted as the fit was, mm.</param>
public sealed record FittedCircle(SectionPoint Centre, double RadiusMm, double ResidualRmsMm)
{
    /// <summary>Fits a circle after Taubin: algebraic, but without the shrinking on short arcs that Kåsa's fit has.</summary>
    /// <param name="points">Three or more points in mm.</param>
    /// <param name="weights">One positive weight a point, such as the length of outline that it stands for.</param>
    /// <returns>The circle; null when the points lie on one line.</returns>
    /// <remarks>G. Taubin, "Estimation of planar curves, surfaces and nonplanar space curves", 1991, as a singular value problem
    /// (N. Chernov, "Circular and linear regression", 2010, 5.10): both cited from memory.</remarks>
    public static FittedCircle? Taubin(ReadOnlySpan<SectionPoint> points, ReadOnlySpan<double> weights)
    {
        if (points.Length < 3 || weights.Length != points.Length)
        {
            throw new ArgumentException($"A circle fit takes 3 or more points with a weight each, not {points.Length}.", nameof(points));
        }

        var total = 0.0;
        var (meanX, meanY) = (0.0, 0.0);
        for (var i = 0; i < points.Length; i++)
        {
            total += weights[i];
            meanX += weights[i] * points[i].XMm;
            meanY += weights[i] * points[i].YMm;
        }

        (meanX, meanY) = (meanX / total, meanY / total);
        var meanZ = 0.0;
        for (var i = 0; i < points.Length; i++)
        {
            meanZ += weights[i] / total * Squared(points[i].XMm - meanX, points[i].YMm - meanY);
        }

        if (meanZ == 0)
        {
            return null;
        }

        var rows = Matrix<double>.Build.Dense(points.Length, 3);
        for (var i = 0; i < points.Length; i++)
        {
            var (x, y, share) = (points[i].XMm - meanX, points[i].YMm - meanY, Math.Sqrt(weights[i] / total));
            rows[i, 0] = share * (Squared(x, y) - meanZ) / (2 * Math.Sqrt(meanZ));
            rows[i, 1] = share * x;
            rows[i, 2] = share * y;
        }

        // The normal matrix is 3 × 3 whatever the number of points, and its eigenvector of the least eigenvalue is the fit.
        var eigen = (rows.Transpose() * rows).Evd(Symmetricity.Symmetric);
        var fit = eigen.EigenVectors.Column(0);
        var a = fit[0] / (2 * Math.Sqrt(meanZ));
        if (Math.Abs(a) * Math.Sqrt(meanZ) < StraightLine)
        {
            return null;
        }

        var centre = new SectionPoint(meanX - (fit[1] / (2 * a)), meanY - (fit[2] / (2 * a)));
        var radius = Math.Sqrt((fit[1] * fit[1]) + (fit[2] * fit[2]) + (4 * a * a * meanZ)) / (2 * Math.Abs(a));
        var squares = 0.0;
        for (var i = 0; i < points.Length; i++)
        {
            var residual = points[i].DistanceTo(centre) - radius;
            squares += weights[i] / total * residual * residual;
        }

        return new(centre, radius, Math.Sqrt(squares));
    }

    /// <summary>Below this share of curvature the "circle" has a radius of a million times the points' own spread.</summary>
    private const double StraightLine = 1e-6;

    private static double Squared(double x, double y) => (x * x) + (y * y);
}
