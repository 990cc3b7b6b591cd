using SectionScan.Metrology.Measures;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Measures;

public sealed class WidthAtHeightTests
{
    [Theory]
    [InlineData(-10)]
    [InlineData(0)]
    [InlineData(4.5)]
    [InlineData(17)]
    public void A_circle_is_as_wide_as_its_chord(double y)
    {
        // Chord 2·√(R² − y²); a corner lies at most 0.00018 mm inside the circle, seen along the chord three times as much.
        Assert.Equal(2 * Math.Sqrt((18 * 18) - (y * y)), WidthAtHeight.Of(AnalyticShapes.Circle(18), y).OverallMm, 0.001);
        Assert.Equal(2 * Math.Sqrt((18 * 18) - (y * y)), MeasureCatalogue.WidthAt(y).Of(AnalyticShapes.Circle(18)), 0.001);
    }

    [Fact]
    public void A_level_line_through_two_horns_gives_two_chords()
    {
        // A cup: walls from x 0 to 1 and from 3 to 4, floor up to y 1.
        var cup = AnalyticShapes.Polygon((0, 0), (4, 0), (4, 3), (3, 3), (3, 1), (1, 1), (1, 3), (0, 3));

        var width = WidthAtHeight.Of(cup, 2);

        Assert.Equal([(0.0, 1.0), (3.0, 4.0)], width.Chords);
        Assert.Equal(4, width.OverallMm);
        Assert.Equal(2, width.OpenMm);
    }

    [Theory]
    [InlineData(0, 4)] // through the tips of two corners: they belong to the sides above
    [InlineData(2, 2)]
    [InlineData(4, 0)]
    [InlineData(5, 0)]
    [InlineData(-1, 0)]
    public void A_line_through_corners_or_past_the_shape_still_gives_pairs(double y, double expected)
    {
        var triangle = AnalyticShapes.Polygon((-2, 0), (2, 0), (0, 4));

        Assert.Equal(expected, WidthAtHeight.Of(triangle, y).OverallMm, 1e-12);
    }

    [Fact]
    public void A_profile_of_widths_integrates_to_the_area()
    {
        // Midpoints of equal slabs would be k − ½; interior points of the trapezoid rule, both ends being 0 wide, serve as well.
        var outline = AnalyticShapes.Ellipse(20, 14);

        var profile = WidthAtHeight.Profile(outline, 1999);

        Assert.Equal(879.645943005, profile.Sum(width => width.OpenMm) * 28 / 2000, 879 * 5e-5);
        Assert.Throws<ArgumentOutOfRangeException>(() => WidthAtHeight.Profile(outline, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => MeasureCatalogue.WidthAt(double.NaN));
    }
}
