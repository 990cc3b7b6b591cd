using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Measures;

/// <summary>Polygons with exact measures, worked out in rational numbers by Green's theorem (P. Bourke, "Calculating the area and
/// centroid of a polygon", 1988; C. Steger, "On the calculation of arbitrary moments of polygons", 1996).</summary>
public sealed class PolygonMeasuresTests
{
    /// <summary>The expected values are given to about ten digits.</summary>
    private const double Digits = 1e-9;

    [Fact]
    public void The_six_cornered_polygon_has_the_area_and_centroid_of_its_exact_rational_values()
    {
        var shape = OutlineShape.Of(AnalyticShapes.SixCorners());

        Assert.Equal(1065, shape.Moments.AreaMm2, 1065 * Digits);
        Assert.Equal(4235.0 / 213, shape.Centroid.XMm, Digits * 20);
        Assert.Equal(2888.0 / 213, shape.Centroid.YMm, Digits * 20);
    }

    [Fact]
    public void The_six_cornered_polygon_has_its_exact_second_moments_and_long_axis()
    {
        var shape = OutlineShape.Of(AnalyticShapes.SixCorners());

        Assert.Equal(69422.5821596, shape.Moments.IxxMm4, 1e-6);
        Assert.Equal(125172.828638, shape.Moments.IyyMm4, 1e-6);
        Assert.Equal(-2192.66431925, shape.Moments.IxyMm4, 1e-7);
        Assert.Equal(125258.9334, shape.Axes.LargestMm4, 1e-4);
        Assert.Equal(69336.47738, shape.Axes.SmallestMm4, 1e-5);
        Assert.Equal(-2.24881982, shape.Axes.LongAxis.Degrees, 1e-8);
        Assert.Equal(125258.9334, MeasureCatalogue.LargestMoment.Of(AnalyticShapes.SixCorners()), 1e-4);
        Assert.Equal(69336.47738, MeasureCatalogue.SmallestMoment.Of(AnalyticShapes.SixCorners()), 1e-5);
    }

    [Fact]
    public void The_six_cornered_polygon_has_the_derived_measures_of_its_area_and_perimeter()
    {
        var outline = AnalyticShapes.SixCorners();

        Assert.Equal(126.648255729, MeasureCatalogue.Perimeter.Of(outline), 1e-9);
        Assert.Equal(33.63646799, MeasureCatalogue.HydraulicDiameter.Of(outline), 1e-8);
        Assert.Equal(36.82390684, MeasureCatalogue.EquivalentDiameter.Of(outline), 1e-8);
        Assert.Equal(0.8343745449, MeasureCatalogue.Circularity.Of(outline), 1e-10);
        Assert.Equal(40, MeasureCatalogue.Width.Of(outline), Digits);
        Assert.Equal(30, MeasureCatalogue.Height.Of(outline), Digits);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1e6, -1e6)]
    public void Centroidal_moments_of_a_rectangle_and_a_triangle_do_not_depend_on_the_origin(double x, double y)
    {
        // bh³/12 and bh³/36 about the centroid: any table of second moments. A coordinate of 1e6 mm has ten digits left of its 1e-10.
        var rectangle = OutlineShape.Of(AnalyticShapes.Polygon((0, 0), (40, 0), (40, 30), (0, 30)).Moved(x, y)).Moments;
        var triangle = OutlineShape.Of(AnalyticShapes.Polygon((0, 0), (4, 0), (0, 3)).Moved(x, y)).Moments;

        Assert.Equal(1200, rectangle.AreaMm2, 1e-6);
        Assert.Equal(40.0 * 30 * 30 * 30 / 12, rectangle.IxxMm4, 1e-3);
        Assert.Equal(30.0 * 40 * 40 * 40 / 12, rectangle.IyyMm4, 1e-3);
        Assert.Equal(0, rectangle.IxyMm4, 1e-3);
        Assert.Equal(6, triangle.AreaMm2, 1e-7);
        Assert.Equal(4.0 * 3 * 3 * 3 / 36, triangle.IxxMm4, 1e-7);
        Assert.Equal(3.0 * 4 * 4 * 4 / 36, triangle.IyyMm4, 1e-7);
        Assert.Equal(x + (4.0 / 3), OutlineShape.Of(AnalyticShapes.Polygon((0, 0), (4, 0), (0, 3)).Moved(x, y)).Centroid.XMm, 1e-7);
    }

    [Fact]
    public void Turning_the_corners_order_round_changes_only_the_sign_of_the_area()
    {
        var corners = AnalyticShapes.SixCorners().Points.ToArray();
        var forward = PolygonMoments.Of(corners);
        Array.Reverse(corners);

        var backward = PolygonMoments.Of(corners);

        Assert.Equal(-forward.AreaMm2, backward.AreaMm2, 1e-9);
        Assert.Equal(forward.Centroid.XMm, backward.Centroid.XMm, 1e-12);
        Assert.Equal(-forward.IxxMm4, backward.IxxMm4, 1e-6);
    }

    [Fact]
    public void A_geometry_library_finds_the_same_area_perimeter_and_centroid()
    {
        foreach (var outline in new[] { AnalyticShapes.SixCorners(), AnalyticShapes.Stadium(14, 12), AnalyticShapes.Superellipse(20, 15, 2.5) })
        {
            var witness = outline.ToPolygon(); // NetTopologySuite, which these measures do not use.

            Assert.Equal(witness.Area, MeasureCatalogue.Area.Of(outline), witness.Area * 1e-12);
            Assert.Equal(witness.Length, MeasureCatalogue.Perimeter.Of(outline), witness.Length * 1e-12);
            var centroid = OutlineShape.Of(outline).Centroid;
            Assert.Equal(0, centroid.DistanceTo(new SectionPoint(witness.Centroid.X, witness.Centroid.Y)), 1e-9);
        }
    }
}
