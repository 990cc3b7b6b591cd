using SectionScan.Metrology.Comparison;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Comparison;

/// <summary>Overlaps with closed forms: lenses of two circles, r²·(2·acos(d/2r) − sin(2·acos(d/2r))), and nested shapes.</summary>
public sealed class AreaOverlapTests
{
    /// <summary>Polygons of 720 corners: 1.3e-5 of area, a few times that where the arcs meet.</summary>
    private const double Relative = 4e-5;

    [Fact]
    public void Circles_of_radius_10_and_11_about_one_centre_share_the_smaller()
    {
        var overlap = AreaOverlap.Of(AnalyticShapes.Circle(10), AnalyticShapes.Circle(11));

        Assert.Equal(0.826446281, overlap.IntersectionOverUnion, 1e-8);
        Assert.Equal(0.9049773756, overlap.Dice, 1e-8);
        Assert.Equal(65.97344573, overlap.SymmetricDifferenceMm2, 65.97 * Relative);
    }

    [Theory]
    [InlineData(2, 274.2260324, 0.77444745, 0.8728885716)]
    [InlineData(4, 234.6958453, 0.5962457298, 0.7470600781)]
    public void Circles_of_radius_10_apart_share_a_lens(double apart, double shared, double iou, double dice)
    {
        var circle = AnalyticShapes.Circle(10);

        var overlap = AreaOverlap.Of(circle, circle.Moved(apart, 0));

        Assert.Equal(shared, overlap.IntersectionMm2, shared * Relative);
        Assert.Equal(iou, overlap.IntersectionOverUnion, Relative);
        Assert.Equal(dice, overlap.Dice, Relative);
    }

    [Fact]
    public void An_ellipse_and_the_circle_of_equal_area_share_less_than_all()
    {
        var overlap = AreaOverlap.Of(AnalyticShapes.Ellipse(20, 14), AnalyticShapes.Circle(16.73320053));

        Assert.Equal(0.7970483728, overlap.IntersectionOverUnion, Relative);
    }

    [Fact]
    public void Outlines_apart_share_nothing_and_equal_ones_all()
    {
        var rectangle = AnalyticShapes.Rectangle(40, 30);

        Assert.Equal(0, AreaOverlap.Of(rectangle, rectangle.Moved(50, 0)).IntersectionOverUnion);
        Assert.Equal(1, AreaOverlap.Of(rectangle, rectangle).IntersectionOverUnion, 1e-12);
        Assert.Equal(0.5, AreaOverlap.Of(rectangle, rectangle.Moved(40.0 / 3, 0)).IntersectionOverUnion, 1e-12);
    }
}
