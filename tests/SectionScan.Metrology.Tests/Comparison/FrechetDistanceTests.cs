using CsCheck;
using NetTopologySuite.Algorithm.Distance;
using NetTopologySuite.Geometries;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Comparison;

public sealed class FrechetDistanceTests
{
    [Fact]
    public void A_reversed_segment_needs_a_leash_across()
    {
        SectionPoint[] lower = [new(0, 0), new(10, 0)];

        Assert.Equal(3, FrechetDistance.Discrete(lower, [new(0, 3), new(10, 3)]), 1e-12);
        Assert.Equal(10.44030651, FrechetDistance.Discrete(lower, [new(10, 3), new(0, 3)]), 1e-8); // √109
    }

    [Fact]
    public void Two_rows_have_the_distances_of_a_geometry_librarys_own_tests()
    {
        // NetTopologySuite's test suite.
        Assert.Equal(
            191.049731745428,
            FrechetDistance.Discrete([new(130, 0), new(0, 0), new(0, 150)], [new(10, 10), new(10, 150), new(130, 10)]),
            1e-9);
        Assert.Equal(
            2.23606797749979,
            FrechetDistance.Discrete([new(0, 0), new(10, 10), new(20, 15)], [new(0, 1), new(8, 9), new(12, 11), new(21, 15)]),
            1e-12);
        Assert.Throws<ArgumentException>(() => FrechetDistance.Discrete([], [new(0, 0)]));
    }

    [Fact]
    public void Random_rows_have_the_distance_of_the_recursive_definition()
    {
        // Eiter & Mannila's own form. The library's optimised search misses it on one in a hundred rows as wild as these.
        var row = Gen.Select(Gen.Double[-50, 50], Gen.Double[-50, 50], (x, y) => new SectionPoint(x, y)).Array[1, 7];
        Gen.Select(row, row).Sample((first, second) =>
        {
            Assert.Equal(Leash(first.Length - 1, second.Length - 1), FrechetDistance.Discrete(first, second), 1e-9);

            double Leash(int i, int j) => Math.Max(first[i].DistanceTo(second[j]), (i, j) switch
            {
                (0, 0) => 0,
                (0, _) => Leash(0, j - 1),
                (_, 0) => Leash(i - 1, 0),
                _ => Math.Min(Leash(i - 1, j - 1), Math.Min(Leash(i - 1, j), Leash(i, j - 1))),
            });
        });
    }

    [Fact]
    public void Two_profiles_of_a_wavy_floor_have_the_distance_that_a_geometry_library_finds()
    {
        var random = new Random(9);
        for (var pair = 0; pair < 100; pair++)
        {
            var (first, second) = (Wave(random), Wave(random));

            Assert.Equal(DiscreteFrechetDistance.Distance(Line(first), Line(second)), FrechetDistance.Discrete(first, second), 1e-9);
        }

        static SectionPoint[] Wave(Random random) => [.. Enumerable.Range(0, random.Next(20, 40)).Select(i =>
            new SectionPoint((3 * i) + random.NextDouble(), (10 * Math.Sin(i / 5.0)) + (2 * random.NextDouble())))];

        static LineString Line(SectionPoint[] points) => new([.. points.Select(p => new Coordinate(p.XMm, p.YMm))]);
    }

    [Fact]
    public void Circles_walked_round_keep_the_leash_of_their_radii_or_centres()
    {
        var circle = AnalyticShapes.Circle(10);

        // Places lie 0.35 mm apart: a leash may be longer than the shapes' distance by s²/8 over its length.
        Assert.Equal(1, FrechetDistance.BetweenOutlines(circle, AnalyticShapes.Circle(11)), 0.015);
        Assert.Equal(2, FrechetDistance.BetweenOutlines(circle, circle.Moved(2, 0)), 0.015);
        Assert.Equal(0, FrechetDistance.BetweenOutlines(circle, circle), 1e-12);
    }

    [Fact]
    public void The_spacing_of_places_does_not_count_as_distance()
    {
        // Corners of the second lie between those of the first; outlines 0.05 mm apart are 0.05 mm apart.
        var distance = FrechetDistance.BetweenOutlines(
            AnalyticShapes.Stadium(14, 12), AnalyticShapes.Stadium(14.05, 12, 600));

        Assert.Equal(0.05, distance, 0.005);
    }

    [Fact]
    public void A_walk_is_never_shorter_than_the_worst_distance()
    {
        var (ellipse, circle) = (AnalyticShapes.Ellipse(20, 14), AnalyticShapes.Circle(Math.Sqrt(280)));

        var walk = FrechetDistance.BetweenOutlines(ellipse, circle);

        Assert.InRange(walk, HausdorffDistance.Between(ellipse, circle) - 0.001, HausdorffDistance.Between(ellipse, circle) + 0.1);
    }
}
