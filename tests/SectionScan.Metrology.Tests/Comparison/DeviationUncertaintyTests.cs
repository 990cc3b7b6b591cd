using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Comparison;

public class DeviationUncertaintyTests
{
    private static readonly Outline Circle = AnalyticShapes.Circle(20);

    // A relative scale of 0.001 moves every place of a circle of radius 20 mm by 0.02 mm; the even offset is no part of the motion.
    [Fact]
    public void A_wrong_scale_stays_in_full_after_a_best_fit() => Assert.All(
        Of(Circle, AlignmentChoice.Usual, LinearEffect.Scale(0.001)), u => Assert.Equal(0.02, u.SharedMm, 2e-4));

    // A side that faces x squarely by 0.03·max(0, cos φ): its mean pull along x is 0.015, the harmonic's own half, and is taken out.
    [Fact]
    public void What_a_best_fit_takes_out_is_not_counted()
    {
        var effect = new FacingOffsetEffect(0.03, 1, 0);

        var placed = Of(Circle, AlignmentChoice.AsPlaced, effect).Max(u => u.SharedMm);
        var fitted = Of(Circle, AlignmentChoice.Usual, effect).Max(u => u.SharedMm);

        Assert.Equal(0.03, placed, 3e-4);

        // 0.03·max(0, c) − 0.015·c = 0.015·|c|.
        Assert.Equal(0.015, fitted, 3e-4);
    }

    // The mean of a random edge over a length l of many correlation lengths L has u = σ·√(L/l).
    [Fact]
    public void Random_edges_average_out_over_the_stated_length() => Assert.All(
        Of(Circle, AlignmentChoice.Usual, new RandomEdgeEffect(0.02, 0.5)), u => Assert.Equal(0.02 * Math.Sqrt(0.5 / 2), u.RandomMm, 1e-6));

    [Fact]
    public void A_doubtful_stretch_is_counted_where_it_is_and_hardly_elsewhere()
    {
        var samples = OutlineComparison.Samples(Circle, Circle);

        var of = DeviationUncertainty.Of(
            samples, new(Circle, Circle, [new("faint stretch", [new LocalOffsetEffect(0.3, 20, 0, 4)])], false, false), AlignmentChoice.Usual, 2);

        Assert.InRange(of[samples.ToList().FindIndex(s => s.Reference.XMm > 19.99)].SharedMm, 0.2, 0.3);
        Assert.InRange(of[samples.ToList().FindIndex(s => s.Reference.YMm > 19.99)].SharedMm, 0, 0.05);
    }

    private static IReadOnlyList<(double SharedMm, double RandomMm)> Of(Outline outline, AlignmentChoice choice, OutlineEffect effect) =>
        DeviationUncertainty.Of(OutlineComparison.Samples(outline, outline), new(outline, outline, [new("one", [effect])], false, false), choice, 2);
}
