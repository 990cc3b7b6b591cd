using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Comparison;

public class OutlineSpreadTests
{
    // Circles of radius 20, 20.3 and 19.9 mm, laid centre on centre, lie 0.4 mm apart everywhere; the first has the middle area.
    [Fact]
    public void Three_circles_lie_as_far_apart_as_their_radii()
    {
        var spread = OutlineSpread.Of(
            [.. new[] { 20.0, 20.3, 19.9 }.Select((radius, i) => (AnalyticShapes.Circle(radius).Moved(i, -i), SectionMarks.None))],
            AlignmentChoice.Usual).ValueOrThrow();

        Assert.Equal(0, spread.Middle);
        Assert.Equal(0.4, spread.MeanRangeMm, 0.002);
        Assert.Equal(1, spread.Widest.Outermost);
        Assert.Equal(2, spread.Widest.Innermost);
    }

    [Fact]
    public void The_place_where_one_of_four_differs_is_found()
    {
        var even = AnalyticShapes.Superellipse(18, 15, 2.5, 720);
        var bitten = even.Mapped(p => p.YMm < -14 ? new(p.XMm, p.YMm - 0.4) : p);

        var spread = OutlineSpread.Of(
            [(even, SectionMarks.None), (bitten, SectionMarks.None), (even.Moved(1, 0), SectionMarks.None), (even.Moved(0, 1), SectionMarks.None)],
            AlignmentChoice.Usual).ValueOrThrow();

        Assert.Equal(0.4, spread.Widest.RangeMm, 0.02);
        Assert.Equal(OutlineRegion.Floor, spread.Widest.Region);
        Assert.Equal(1, spread.Widest.Outermost);
    }
}
