using NetTopologySuite.Algorithm;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Measures;

public sealed class FeretDiametersTests
{
    private const double Tolerance = 1e-8;

    [Fact]
    public void The_3_4_5_triangle_is_5_long_and_2_4_thin()
    {
        // Least width of a triangle: twice the area over the longest side, 12/5.
        var feret = FeretDiameters.Of(AnalyticShapes.Polygon((0, 0), (4, 0), (0, 3)).Points);

        Assert.Equal(5, feret.MaxMm, Tolerance);
        Assert.Equal(2.4, feret.MinMm, Tolerance);
    }

    [Fact]
    public void A_regular_hexagon_measures_two_sides_across_corners_and_root_three_across_flats()
    {
        var feret = FeretDiameters.Of(AnalyticShapes.RegularPolygon(6, 10).Points);

        Assert.Equal(20, feret.MaxMm, Tolerance);
        Assert.Equal(17.32050808, feret.MinMm, Tolerance);
    }

    [Fact]
    public void An_ellipse_measures_its_two_axes_in_their_directions()
    {
        var feret = FeretDiameters.Of(AnalyticShapes.Ellipse(20, 14).Points);

        Assert.Equal(40, feret.MaxMm, Tolerance);
        Assert.Equal(0, Math.Sin(feret.MaxDirection.Radians), 1e-9);
        // The flat between two corners at the end of the short axis lies one half step's sagitta inside on either side.
        Assert.Equal(28, feret.MinMm, 28 * AnalyticShapes.InscribedAreaError);
        Assert.Equal(1, Math.Abs(Math.Sin(feret.MinDirection.Radians)), 1e-4);
    }

    [Fact]
    public void A_Reuleaux_triangle_has_one_width_and_the_area_and_perimeter_of_its_closed_forms()
    {
        var outline = AnalyticShapes.Reuleaux(30);

        Assert.Equal(30, MeasureCatalogue.MaxFeret.Of(outline), 30 * AnalyticShapes.InscribedAreaError);
        Assert.Equal(30, MeasureCatalogue.MinFeret.Of(outline), 30 * AnalyticShapes.InscribedAreaError);
        Assert.Equal(634.2938307, MeasureCatalogue.Area.Of(outline), 634 * AnalyticShapes.InscribedAreaError);
        Assert.Equal(94.24777961, MeasureCatalogue.Perimeter.Of(outline), 94 * AnalyticShapes.InscribedLengthError);
    }

    [Fact]
    public void The_least_width_agrees_with_a_value_from_a_geometry_librarys_own_tests()
    {
        // NetTopologySuite's test suite: the minimum diameter of this polygon runs from (0, 0) to (185.862069, 79.655172).
        var feret = FeretDiameters.Of(AnalyticShapes.Polygon((0, 240), (160, 140), (220, 0), (0, 0)).Points);

        Assert.Equal(new SectionPoint(0, 0).DistanceTo(new(185.862069, 79.655172)), feret.MinMm, 1e-6);
    }

    [Fact]
    public void Random_shapes_have_the_least_width_of_a_geometry_library_and_the_largest_distance_of_all_pairs()
    {
        var random = new Random(20);
        for (var shape = 0; shape < 50; shape++)
        {
            // Wavy, so that many corners lie off the hull.
            var wave = 1 + random.Next(9);
            var outline = AnalyticShapes.Circle(20, 90).Mapped(p =>
            {
                var factor = 1 + (0.2 * Math.Sin(wave * Math.Atan2(p.YMm, p.XMm))) + (0.02 * random.NextDouble());
                return new(p.XMm * factor, p.YMm * factor);
            });

            var feret = FeretDiameters.Of(outline.Points);

            Assert.Equal(new MinimumDiameter(outline.ToPolygon()).Length, feret.MinMm, 1e-9);
            Assert.Equal(LargestOfAllPairs(outline), feret.MaxMm, 1e-12);
        }
    }

    [Fact]
    public void A_rectangle_with_many_corners_on_its_sides_is_measured_like_one_with_four()
    {
        var crowded = Outline.From(AnalyticShapes.Rectangle(40, 30).Resampled(280)).ValueOrThrow();

        Assert.Equal(30, MeasureCatalogue.MinFeret.Of(crowded), Tolerance);
        Assert.Equal(50, MeasureCatalogue.MaxFeret.Of(crowded), Tolerance);
    }

    [Fact]
    public void Points_on_one_line_have_a_length_and_no_width()
    {
        var feret = FeretDiameters.Of([new(0, 0), new(1, 1), new(3, 3), new(2, 2)]);

        Assert.Equal(Math.Sqrt(18), feret.MaxMm, Tolerance);
        Assert.Equal(0, feret.MinMm);
        Assert.Throws<ArgumentException>(() => FeretDiameters.Of([]));
    }

    private static double LargestOfAllPairs(Outline outline)
    {
        var largest = 0.0;
        foreach (var from in outline.Points)
        {
            foreach (var to in outline.Points)
            {
                largest = Math.Max(largest, from.DistanceTo(to));
            }
        }

        return largest;
    }
}
