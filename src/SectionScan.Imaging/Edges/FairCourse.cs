using MathNet.Numerics.LinearAlgebra;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Edges;

/// <summary>The fair course of a port section through most of a rough outline: bites and spurs over a third of it do not count.</summary>
/// <remarks>A short Fourier series of the radius about the middle, fitted by iteratively reweighted least squares with Tukey's biweight
/// (P. W. Holland and R. E. Welsch, Commun. Stat. A6 (1977) 813, from memory).</remarks>
internal static class FairCourse
{
    private const int Harmonics = 5;
    private const int Rounds = 12;
    private const int Places = 180;

    // Keeps the equations solvable where hardly a point is borne out.
    private const double Ridge = 1e-6;

    // A section's own corners stand off the short series by this much; more is a bite or a spur.
    private const double UsualMm = 0.6;
    private const double TukeyFactor = 4.685;

    /// <summary>Fits the course.</summary>
    /// <param name="rough">The rough outline, mm.</param>
    /// <param name="trust">How much each point counts, 0 to 1: how well the photo bears it out.</param>
    /// <returns>Points round the fair course, or null when the outline cannot be told by one radius at each angle.</returns>
    public static IReadOnlyList<TargetPoint>? Through(IReadOnlyList<TargetPoint> rough, IReadOnlyList<double> trust)
    {
        var (x, y) = ((rough.Min(p => p.XMm) + rough.Max(p => p.XMm)) / 2, (rough.Min(p => p.YMm) + rough.Max(p => p.YMm)) / 2);
        var radii = Array.ConvertAll([.. rough], p => Math.Sqrt(((p.XMm - x) * (p.XMm - x)) + ((p.YMm - y) * (p.YMm - y))));
        const int Terms = (2 * Harmonics) + 1;
        var design = new double[rough.Count * Terms];
        for (var i = 0; i < rough.Count; i++)
        {
            var angle = Math.Atan2(rough[i].YMm - y, rough[i].XMm - x);
            for (var k = 0; k < Terms; k++)
            {
                design[(i * Terms) + k] = Term(angle, k);
            }
        }

        double[] own = [.. trust.Select(t => Math.Max(t, 1e-3))];
        var weights = own;
        var off = new double[rough.Count];
        var series = Vector<double>.Build.Dense(Terms);
        for (var round = 0; round < Rounds; round++)
        {
            series = Solve(design, radii, weights, Terms);
            for (var i = 0; i < off.Length; i++)
            {
                var course = 0.0;
                for (var k = 0; k < Terms; k++)
                {
                    course += design[(i * Terms) + k] * series[k];
                }

                off[i] = Math.Abs(radii[i] - course);
            }

            var scale = Math.Max(1.4826 * WeightedMedian(off, own), UsualMm / 3);

            // Least absolute deviations lead to the right course, the biweight then leaves the bites out.
            weights = [.. own.Zip(off, (trusted, o) => trusted * (round < Rounds / 2
                ? 1 / Math.Max(o, 0.1)
                : o < TukeyFactor * scale ? Math.Pow(1 - Math.Pow(o / (TukeyFactor * scale), 2), 2) : 1e-6))];
        }

        var points = new TargetPoint[Places];
        for (var i = 0; i < Places; i++)
        {
            var angle = 2 * Math.PI * i / Places;
            var r = Enumerable.Range(0, series.Count).Sum(k => series[k] * Term(angle, k));
            if (r <= 1)
            {
                return null;
            }

            points[i] = new(x + (r * Math.Cos(angle)), y + (r * Math.Sin(angle)));
        }

        return points;
    }

    private static Vector<double> Solve(double[] design, double[] values, double[] weights, int terms)
    {
        var normal = Matrix<double>.Build.DenseDiagonal(terms, Ridge).ToArray();
        var right = new double[terms];
        for (var i = 0; i < values.Length; i++)
        {
            var row = design.AsSpan(i * terms, terms);
            for (var j = 0; j < terms; j++)
            {
                var weighted = weights[i] * row[j];
                right[j] += weighted * values[i];
                for (var k = 0; k <= j; k++)
                {
                    normal[j, k] += weighted * row[k];
                }
            }
        }

        for (var j = 0; j < terms; j++)
        {
            for (var k = 0; k < j; k++)
            {
                normal[k, j] = normal[j, k];
            }
        }

        return Matrix<double>.Build.DenseOfArray(normal).Cholesky().Solve(Vector<double>.Build.Dense(right));
    }

    private static double WeightedMedian(double[] values, double[] weights)
    {
        var (sorted, by) = ((double[])values.Clone(), (double[])weights.Clone());
        Array.Sort(sorted, by);
        var (half, sum) = (by.Sum() / 2, 0.0);
        for (var i = 0; i < sorted.Length; i++)
        {
            sum += by[i];
            if (sum >= half)
            {
                return sorted[i];
            }
        }

        return sorted[^1];
    }

    private static double Term(double angle, int k) => k == 0 ? 1 : k % 2 == 1 ? Math.Cos((k + 1) / 2 * angle) : Math.Sin(k / 2 * angle);
}
