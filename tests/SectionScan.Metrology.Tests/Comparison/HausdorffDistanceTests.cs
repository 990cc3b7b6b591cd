using NetTopologySuite.Algorithm.Distance;
using NetTopologySuite.Geometries;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Comparison;

public sealed class HausdorffDistanceTests
{
    /// <summary>Twice what the search may leave out, and the ten digits of the expected values.</summary>
    private const double Tolerance = 2 * HausdorffDistance.ToleranceMm;

    [Fact]
    public void Parallel_segments_are_their_distance_apart_in_either_direction_of_travel()
    {
        SectionPoint[] lower = [new(0, 0), new(10, 0)];

        Assert.Equal(3, HausdorffDistance.Between(lower, [new(0, 3), new(10, 3)]), Tolerance);
        Assert.Equal(3, HausdorffDistance.Between(lower, [new(10, 3), new(0, 3)]), Tolerance);
    }

    [Fact]
    public void A_segment_inside_a_longer_one_is_at_no_distance_from_it_and_the_longer_one_at_five()
    {
        SectionPoint[] shorter = [new(0, 0), new(10, 0)];
        SectionPoint[] longer = [new(0, 0), new(15, 0)];

        Assert.Equal(0, HausdorffDistance.Directed(shorter, longer), Tolerance);
        Assert.Equal(5, HausdorffDistance.Directed(longer, shorter), Tolerance);
        Assert.Equal(5, HausdorffDistance.Between(shorter, longer), Tolerance);
    }

    [Fact]
    public void Edges_count_and_not_corners_only()
    {
        // The apex (5, 4) is 4 above the other's edge; its corners are √41 = 6.403 away.
        Assert.Equal(4, HausdorffDistance.Between([new(0, 0), new(10, 0)], [new(0, 0), new(5, 4), new(10, 0)]), Tolerance);

        // NetTopologySuite's tests: LINESTRING (0 0, 2 0) and (0 1, 1 2, 2 1): 2.0.
        Assert.Equal(2, HausdorffDistance.Between([new(0, 0), new(2, 0)], [new(0, 1), new(1, 2), new(2, 1)]), Tolerance);
    }

    [Fact]
    public void The_worst_point_is_found_within_an_edge()
    {
        // NetTopologySuite's tests: LINESTRING (130 0, 0 0, 0 150) and (10 10, 10 150, 130 10): 14.142 over corners, 70.0 over
        // corners and middles. Over every point: where y = 150 − (x − 10)·7/6 meets the bisector x = y, 161.6667/2.1666667.
        SectionPoint[] first = [new(130, 0), new(0, 0), new(0, 150)];
        SectionPoint[] second = [new(10, 10), new(10, 150), new(130, 10)];

        Assert.Equal(970.0 / 13, HausdorffDistance.Between(first, second), Tolerance);
        Assert.Equal(70, DiscreteHausdorffDistance.Distance(Line(first), Line(second), 0.5), 1e-9);
        Assert.Equal(DiscreteHausdorffDistance.Distance(Line(first), Line(second), 0.001), HausdorffDistance.Between(first, second), 0.2);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    public void Equal_circles_are_as_far_as_their_centres(double apart)
    {
        var circle = AnalyticShapes.Circle(10);

        Assert.Equal(apart, HausdorffDistance.Between(circle, circle.Moved(apart, 0)), Tolerance);
    }

    [Fact]
    public void An_ellipse_and_the_circle_of_its_area_differ_by_the_long_axis()
    {
        var radius = Math.Sqrt(20 * 14);

        var distance = HausdorffDistance.Between(AnalyticShapes.Ellipse(20, 14), AnalyticShapes.Circle(radius));

        Assert.Equal(3.266799469, distance, Tolerance);
    }

    [Fact]
    public void Random_outlines_are_as_far_as_a_geometry_library_finds_on_a_fine_grid()
    {
        var random = new Random(5);
        for (var i = 0; i < 20; i++)
        {
            var (first, second) = (Blob(random), Blob(random));

            var distance = HausdorffDistance.Between(first, second);

            // The library asks every hundredth of an edge of at most 6 mm: it may miss half a step.
            var witness = DiscreteHausdorffDistance.Distance(first.ToPolygon().ExteriorRing, second.ToPolygon().ExteriorRing, 0.01);
            Assert.InRange(distance, witness - Tolerance, witness + 0.03);
        }
    }

    [Fact]
    public void Ninety_five_in_a_hundred_places_leave_a_narrow_bump_out()
    {
        // A bump 0.5 mm high over 3 % of the corners; with its two steps it is 3.8 % of the length.
        var plain = AnalyticShapes.Circle(18);
        var bumped = Outline.From(plain.Points.ToArray().Select((p, i) => i < 21 ? new SectionPoint(p.XMm * 18.5 / 18, p.YMm * 18.5 / 18) : p))
            .ValueOrThrow();

        Assert.Equal(0.5, HausdorffDistance.Between(plain, bumped), 0.001);
        Assert.InRange(HausdorffDistance.Percentile(plain, bumped), 0, 0.01);
        Assert.Equal(1, HausdorffDistance.Percentile(plain, plain.Scaled(19.0 / 18)), 0.001);
        Assert.Throws<ArgumentOutOfRangeException>(() => HausdorffDistance.Percentile(plain, bumped, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => HausdorffDistance.Percentile(plain, bumped, 0.95, 0));
        Assert.Throws<ArgumentException>(() => HausdorffDistance.Between([new(0, 0)], [new(0, 0), new(1, 0)]));
    }

    private static Outline Blob(Random random) => AnalyticShapes.Polygon([.. Enumerable.Range(0, 40).Select(i =>
    {
        var (sin, cos) = Math.SinCos(2 * Math.PI * i / 40);
        var radius = 15 + (4 * random.NextDouble());
        return (radius * cos, radius * sin);
    })]);

    private static LineString Line(SectionPoint[] points) => new([.. points.Select(p => new Coordinate(p.XMm, p.YMm))]);
}
