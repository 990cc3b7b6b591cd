using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Tests.Outlines;

/// <summary>Steiner's formula A + P·d + π·d² for a convex outline (J. Steiner 1840, cited from memory), with P of the ellipse by the complete
/// elliptic integral (Abramowitz and Stegun, chapter 17).</summary>
public class OutlineOffsetTests
{
    // An ellipse of 2000 corners has 2e-6 less area than the true one, and the offset's arcs are within d/1200.
    private const double PolygonMm2 = 0.01;

    [Theory]
    [InlineData(0.79375, 967.070376676)]
    [InlineData(-0.79375, 796.180161514)]
    [InlineData(1, 990.434915288)]
    [InlineData(-1, 775.140156029)]
    [InlineData(2, 1107.50707288)]
    [InlineData(-2, 676.917554361)]
    public void An_ellipse_of_40_by_28_moved_all_round_has_Steiners_area(double lengthMm, double areaMm2)
    {
        var moved = OutlineOffset.By(Ellipse(2000), lengthMm).ValueOrThrow();

        Assert.Equal(areaMm2, PolygonMoments.Of(moved.Points).AreaMm2, PolygonMm2);
    }

    [Theory]
    [InlineData(2, 1492.56637061)]
    [InlineData(-2, 936)]
    public void A_rectangle_rounds_its_corners_outward_and_keeps_them_inward(double lengthMm, double areaMm2)
    {
        var rectangle = Outline.From([new(0, 0), new(40, 0), new(40, 30), new(0, 30)]).ValueOrThrow();

        Assert.Equal(areaMm2, PolygonMoments.Of(OutlineOffset.By(rectangle, lengthMm).ValueOrThrow().Points).AreaMm2, PolygonMm2);
    }

    [Fact]
    public void No_length_changes_nothing()
    {
        var ellipse = Ellipse(360);

        Assert.Same(ellipse, OutlineOffset.By(ellipse, 0).ValueOrThrow());
    }

    [Theory]
    [InlineData(-15, "closes wholly")]
    [InlineData(-3, "falls into 2 pieces")]
    public void An_outline_that_closes_is_refused(double lengthMm, string said)
    {
        // Two rooms of 20 mm joined by a neck of 4 mm.
        var dumbbell = Outline.From(new (double X, double Y)[]
            { (0, 0), (20, 0), (20, 8), (30, 8), (30, 0), (50, 0), (50, 20), (30, 20), (30, 12), (20, 12), (20, 20), (0, 20) }
            .Select(p => new SectionPoint(p.X, p.Y))).ValueOrThrow();

        Assert.False(OutlineOffset.By(dumbbell, lengthMm, "p04 station 2").TryGet(out _, out var problem));
        Assert.Equal(("offset-closes", "p04 station 2"), (problem.Code, problem.Where));
        Assert.Contains(said, problem.What, StringComparison.Ordinal);
    }

    private static Outline Ellipse(int count) => Outline.From(Enumerable.Range(0, count).Select(i =>
    {
        var (sin, cos) = Math.SinCos(2 * Math.PI * i / count);
        return new SectionPoint(20 * cos, 14 * sin);
    })).ValueOrThrow();
}
