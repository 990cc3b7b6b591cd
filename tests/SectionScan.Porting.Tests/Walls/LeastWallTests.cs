using System.Globalization;
using SectionScan.Metrology.Outlines;
using SectionScan.Porting.Walls;
using SectionScan.Testing.Sections;
using SectionScan.Testing.Witnesses;

namespace SectionScan.Porting.Tests.Walls;

/// <summary>Closed forms of plane geometry, and shapely (Debian python3-shapely) for shapes that have none.</summary>
public class LeastWallTests
{
    // A circle of 720 corners lies up to r(1 - cos(π/720)) inside the true one: 0.0001 mm for r = 10.
    private const double PolygonMm = 0.0002;
    private static readonly Outline Round = SampleSections.Ellipse(20, 20, 720);

    [Theory]
    [InlineData(20, 0, 4, 6)]
    [InlineData(0, -15, 2.5, 2.5)]
    [InlineData(12, 0, 4, -2)]
    [InlineData(8, 0, 1, -3)]
    [InlineData(9, 12, 0, 5)]
    public void The_wall_beside_a_round_passage_is_the_distance_of_the_centres_less_both_radii(double x, double y, double radius, double wall)
    {
        var least = LeastWall.Between(Round, new KeepOutCircle(new(x, y), radius));

        Assert.Equal(wall, least.WallMm, PolygonMm);
        Assert.Equal(Math.Atan2(y, x), Math.Atan2(least.AtPort.YMm, least.AtPort.XMm), 0.005);
        Assert.Equal(Math.Abs(wall), least.AtPort.DistanceTo(least.AtKeepOut), PolygonMm);
    }

    [Theory]
    [InlineData(13, 3)]
    [InlineData(9.25, -0.75)]
    public void The_wall_to_a_line_is_its_distance_less_the_radius(double x, double wall)
    {
        var least = LeastWall.Between(Round, new KeepOutLine([new(x, -30), new(x, 30)]));

        Assert.Equal(wall, least.WallMm, 0.001);
        Assert.Equal(x, least.AtKeepOut.XMm, 1e-9);
        Assert.Equal(0, least.AtKeepOut.YMm, 0.05);
    }

    [Fact]
    public void A_port_that_lies_within_a_passage_has_no_wall()
    {
        var jacket = new KeepOutOutline(SampleSections.Ellipse(30, 30, 720));

        Assert.True(LeastWall.Between(Round, jacket).WallMm < -4.9);
    }

    [Theory]
    [InlineData(1, 24, 6)]
    [InlineData(2, -22, 15)]
    [InlineData(3, 3, -27)]
    [InlineData(4, 31, -8)]
    public void The_wall_to_a_passage_of_any_shape_is_what_shapely_finds(int number, double x, double y)
    {
        var port = SampleSections.Blob(number, 360);
        var passage = SampleSections.Blob(number + 50, 90).Scaled(0.3).Moved(x, y);

        var least = LeastWall.Between(port, new KeepOutOutline(passage));

        var shapely = DebianPython.Run(
            """
            import sys
            from shapely.geometry import Polygon
            read = lambda text: Polygon([tuple(map(float, p.split(','))) for p in text.split()])
            print(repr(read(sys.argv[1]).distance(read(sys.argv[2]))))
            """,
            Text(port), Text(passage));
        Assert.Equal(double.Parse(shapely, CultureInfo.InvariantCulture), least.WallMm, 1e-9);
        Assert.True(least.WallMm > 0);
    }

    [Theory]
    [InlineData(12, 4)]
    [InlineData(-10, -6)]
    public void A_break_through_is_as_deep_as_shapely_finds_the_passage_within_the_port(double x, double y)
    {
        var port = SampleSections.Blob(7, 360);
        var passage = SampleSections.Blob(60, 90).Scaled(0.25).Moved(x, y);

        var least = LeastWall.Between(port, new KeepOutOutline(passage));

        var shapely = DebianPython.Run(
            """
            import sys
            from shapely.geometry import Polygon, Point
            read = lambda text: Polygon([tuple(map(float, p.split(','))) for p in text.split()])
            port, border = read(sys.argv[1]), read(sys.argv[2]).exterior
            places = [border.interpolate(s / 20000, normalized=True) for s in range(20000)]
            print(repr(max(port.exterior.distance(p) for p in places if port.contains(p))))
            """,
            Text(port), Text(passage));
        Assert.Equal(-double.Parse(shapely, CultureInfo.InvariantCulture), least.WallMm, 0.01);
    }

    [Fact]
    public void Distances_of_places_are_negative_within_a_passage()
    {
        Assert.Equal(-4, new KeepOutCircle(new(1, 1), 4).DistanceMm(new(1, 1)));
        Assert.Equal(5, new KeepOutLine([new(0, 0), new(10, 0)]).DistanceMm(new(13, 4)), 1e-12);
        Assert.Equal(-10, new KeepOutOutline(Round).DistanceMm(new(0, 0)), PolygonMm);
        Assert.Equal(2, new KeepOutOutline(Round).Moved(0, 3).DistanceMm(new(0, 15)), PolygonMm);
    }

    private static string Text(Outline outline) =>
        string.Join(' ', outline.Points.ToArray().Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.XMm:R},{p.YMm:R}")));
}
