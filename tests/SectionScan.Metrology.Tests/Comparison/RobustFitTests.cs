using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Testing.Shapes;
using SectionScan.Testing.Truth;

namespace SectionScan.Metrology.Tests.Comparison;

/// <summary>The true outlines behind the sample photos: at station 4 the finished port was cut 0.400 mm beyond the exemplar, toward
/// -12 degrees; everywhere else it lies 0.2 to 0.4 mm inside (sample-images, truth).</summary>
public class RobustFitTests
{
    private const AlignmentFreedom Rigid = AlignmentFreedom.X | AlignmentFreedom.Y | AlignmentFreedom.Rotation;

    private static readonly Outline Exemplar = TrueOutline("p01", 4);

    /// <summary>Laid down by hand: turned and off its place.</summary>
    private static readonly Outline Finished = TrueOutline("p06", 4).Turned(Angle.FromDegrees(3)).Moved(0.5, -0.3);

    [Fact]
    public void A_local_over_cut_is_shown_at_its_true_depth_and_place()
    {
        var highest = Highest(new(Rigid, FitLoss.Tukey, HasEvenOffset: true));

        Assert.Equal(0.400, highest.DeviationMm, 0.02);
        Assert.Equal(-12, highest.Direction.Degrees, 3.0);
    }

    [Theory]
    [InlineData(FitLoss.LeastSquares, 0.16, 0.24)]
    [InlineData(FitLoss.Huber, 0.05, 0.12)]
    [InlineData(FitLoss.Absolute, 0.03, 0.09)]
    public void Other_losses_hide_some_of_it(FitLoss loss, double leastHiddenMm, double mostHiddenMm) =>
        Assert.InRange(0.400 - Highest(new(Rigid, loss, HasEvenOffset: true)).DeviationMm, leastHiddenMm, mostHiddenMm);

    [Fact]
    public void Without_an_even_offset_even_a_robust_loss_hides_half_of_it() =>
        Assert.InRange(Highest(new(Rigid, FitLoss.Tukey)).DeviationMm, 0.15, 0.25);

    [Fact]
    public void The_even_offset_found_is_the_one_that_was_made()
    {
        // Parallel inward by 0.3 mm but for a bite of 0.5 mm; the offset itself is no part of the motion.
        var reference = AnalyticShapes.Superellipse(18, 15, 2.5, 720);
        var inside = Offset(reference, -0.3).Mapped(p => p.XMm > 15.5 ? new(p.XMm + 0.5, p.YMm) : p);

        var laid = OutlineAlignment.Fit(reference, inside.Moved(1, 2), new(Rigid, FitLoss.Tukey, HasEvenOffset: true), SimilarityTransform.Identity);

        Assert.Equal(-0.3, laid.EvenOffsetMm, 0.005);
        Assert.Equal(-1, laid.Transform.XMm, 0.01);
        Assert.Equal(-2, laid.Transform.YMm, 0.01);
    }

    private static DeviationSample Highest(FitRule rule)
    {
        var laid = OutlineAlignment.Fit(Exemplar, Finished, rule, SimilarityTransform.Identity);
        return OutlineComparison.Samples(Exemplar, laid.Outline).MaxBy(sample => sample.DeviationMm)!;
    }

    private static Outline TrueOutline(string photo, int station) =>
        Outline.From(SamplePhotos.TruthOf(photo).Sections.Single(section => section.Station == station).Outline).ValueOrThrow();

    private static Outline Offset(Outline outline, double offsetMm) => Outline.From(
        outline.ToPolygon().Buffer(offsetMm, 32).Coordinates.Select(c => new Metrology.Frames.SectionPoint(c.X, c.Y))).ValueOrThrow();
}
