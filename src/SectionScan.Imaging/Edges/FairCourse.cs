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
        var design = Matrix<double>.Build.Dense(
            rough.Count, (2 * Harmonics) + 1, (i, k) => Term(Math.Atan2(rough[i].YMm - y, rough[i].XMm - x), k));
        var radius = Vector<double>.Build.Dense(radii);
        var own = Vector<double>.Build.Dense(rough.Count, i => Math.Max(trust[i], 1e-3));
        var weights = own;
        var series = Vector<double>.Build.Dense(design.ColumnCount);
        for (var round = 0; round < Rounds; round++)
        {
            var weighted = design.MapIndexed((i, _, value) => value * weights[i]);
            series = (weighted.TransposeThisAndMultiply(design) + Matrix<double>.Build.DenseDiagonal(design.ColumnCount, Ridge)).Cholesky().Solve(weighted.TransposeThisAndMultiply(radius));
            var off = (radius - (design * series)).PointwiseAbs();
            var scale = Math.Max(1.4826 * WeightedMedian(off, own), UsualMm / 3);

            // Least absolute deviations lead to the right course, the biweight then leaves the bites out.
            weights = own.PointwiseMultiply(round < Rounds / 2
                ? off.Map(o => 1 / Math.Max(o, 0.1))
                : off.Map(o => o < TukeyFactor * scale ? Math.Pow(1 - Math.Pow(o / (TukeyFactor * scale), 2), 2) : 1e-6));
        }

        var course = new TargetPoint[Places];
        for (var i = 0; i < Places; i++)
        {
            var angle = 2 * Math.PI * i / Places;
            var r = Enumerable.Range(0, series.Count).Sum(k => series[k] * Term(angle, k));
            if (r <= 1)
            {
                return null;
            }

            course[i] = new(x + (r * Math.Cos(angle)), y + (r * Math.Sin(angle)));
        }

        return course;
    }

    private static double WeightedMedian(Vector<double> values, Vector<double> weights)
    {
        var (half, sum) = (weights.Sum() / 2, 0.0);
        foreach (var (value, weight) in values.Zip(weights).OrderBy(p => p.First))
        {
            sum += weight;
            if (sum >= half)
            {
                return value;
            }
        }

        return values.Maximum();
    }

    private static double Term(double angle, int k) => k == 0 ? 1 : k % 2 == 1 ? Math.Cos((k + 1) / 2 * angle) : Math.Sin(k / 2 * angle);
}
