using CsCheck;
using NetTopologySuite.Geometries;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Comparison;

public sealed class EdgeIndexTests
{
    [Fact]
    public void The_nearest_edge_is_as_far_as_a_geometry_library_says_inside_outside_and_far_away()
    {
        var row = Gen.Select(Gen.Double[-50, 50], Gen.Double[-20, 20], (x, y) => new SectionPoint(x, y));
        Gen.Select(row.Array[2, 40], Gen.Double[-200, 200], Gen.Double[-60, 60]).Sample((corners, x, y) =>
        {
            var witness = new LineString([.. corners.Select(p => new Coordinate(p.XMm, p.YMm))]).Distance(new Point(x, y));

            var foot = new EdgeIndex(corners, isClosed: false).Nearest(new(x, y));

            Assert.Equal(witness, foot.DistanceMm, 1e-9);
            Assert.Equal(foot.DistanceMm, foot.Point.DistanceTo(new(x, y)), 1e-9);
        });
    }

    [Fact]
    public void The_closing_edge_counts_for_a_polygon_only()
    {
        SectionPoint[] cup = [new(0, 3), new(0, 0), new(4, 0), new(4, 3)];

        Assert.Equal(1, new EdgeIndex(cup, isClosed: true).Nearest(new(2, 4)).DistanceMm, 1e-12);
        Assert.Equal(Math.Sqrt(5), new EdgeIndex(cup, isClosed: false).Nearest(new(2, 4)).DistanceMm, 1e-12);
        Assert.Equal(0, new EdgeIndex(AnalyticShapes.Circle(5).Points, isClosed: true).Nearest(new(5, 0)).DistanceMm, 1e-12);
        Assert.Throws<ArgumentException>(() => new EdgeIndex([new(0, 0)], isClosed: true));
    }
}
