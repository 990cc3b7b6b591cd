using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Lofts;
using SectionScan.Testing.Shapes;
using SectionScan.Testing.Truth;

namespace SectionScan.Porting.Tests.Lofts;

public class LoftTests
{
    private const double ClosedFormShare = 0.001;

    [Fact]
    public void A_cylinder_has_its_volume()
    {
        var volume = Volume(Station(1, AnalyticShapes.Circle(18), 0), Station(2, AnalyticShapes.Circle(18), 60));

        Assert.Equal(1, volume / (Math.PI * 18 * 18 * 60), ClosedFormShare);
    }

    // The field guide's 3.6: R 20 to 16 over 30 mm, 9760π.
    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    public void A_cone_frustum_has_its_volume(int stations)
    {
        var volume = Volume([.. Enumerable.Range(0, stations).Select(i =>
            Station(i + 1, AnalyticShapes.Circle(20 - (4.0 * i / (stations - 1))), 30.0 * i / (stations - 1)))]);

        Assert.Equal(1, volume / 30661.944299, ClosedFormShare);
    }

    // Pappus, the field guide's 3.6: r 18 on a bend radius of 45 through 90°.
    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    public void A_sector_of_a_torus_has_its_volume_after_Pappus(int stations)
    {
        var volume = Volume([.. Enumerable.Range(0, stations).Select(i => (double)i / (stations - 1)).Select((share, i) =>
            Station(i + 1, AnalyticShapes.Circle(18), 45 * Math.PI / 2 * share, 90 * share))]);

        Assert.Equal(1, volume / 71949.4160839, ClosedFormShare);
    }

    // Same place: a D-section on the bend, flat on the inside and on the outside; lengths along the centroids.
    [Theory]
    [InlineData(1, 63554.8622927)]
    [InlineData(-1, 56533.3503132)]
    public void A_bent_D_section_has_its_volume_after_Pappus(int side, double wanted)
    {
        // The circle's centre runs on 45; the centroid lies 2.631132833 from it, away from the flat.
        var shape = AnalyticShapes.DSection(18, 8);
        var section = side > 0 ? shape : shape.Turned(Angle.FromDegrees(180));
        var length = (45 + (side * 2.631132833)) * Math.PI / 2;

        Assert.Equal(1, Volume(Station(1, section, 0), Station(2, section, length, 90)) / wanted, ClosedFormShare);
    }

    [Fact]
    public void The_exemplar_port_of_the_photos_has_the_volume_of_its_true_areas()
    {
        // True outlines; the places along the centreline are this test's own.
        double[] at = [0, 12, 25, 37, 50, 61, 72, 85];
        double[] turn = [0, 2, 6, 14, 28, 45, 62, 75];
        var sections = new[] { "p01", "p02" }.SelectMany(photo => SamplePhotos.TruthOf(photo).Sections).OrderBy(section => section.Station).ToList();
        var stations = sections.Select((section, i) => Station(section.Station!.Value, Outline.From(section.Outline).ValueOrThrow(), at[i], turn[i])).ToArray();

        // Natural cubic through the roots of the true areas, of MathNet.Numerics, integrated by fine trapezoids: none of the loft's own curves.
        var root = MathNet.Numerics.Interpolation.CubicSpline.InterpolateNatural(at, sections.Select(section => Math.Sqrt(section.AreaMm2)));
        var integral = Enumerable.Range(0, 8500).Sum(i => Math.Pow(root.Interpolate((i + 0.5) / 100), 2) / 100);

        Assert.Equal(1, Volume(stations) / integral, 0.005);
    }

    [Fact]
    public void Every_station_is_met_exactly()
    {
        var shapes = new[] { AnalyticShapes.Superellipse(17, 19, 2.6), AnalyticShapes.DSection(18, 8), AnalyticShapes.Ellipse(20, 14) };
        var loft = Make([.. shapes.Select((shape, i) => Station(i + 1, shape, 20 * i, 10 * i))]);

        foreach (var station in loft.Stations)
        {
            var ring = loft.Rings.Single(r => Math.Abs(r.DistanceMm - station.DistanceMm) < 1e-9);
            var centroid = PolygonMoments.Of(station.Outline.Points).Centroid;
            var edge = station.Outline.ToPolygon().ExteriorRing;
            Assert.All(ring.Section, p => Assert.InRange(edge.Distance(new NetTopologySuite.Geometries.Point(p.XMm + centroid.XMm, p.YMm + centroid.YMm)), 0, 1e-9));
        }
    }

    [Fact]
    public void The_surface_is_closed_and_does_not_cross_itself()
    {
        var notched = Outline.From(Enumerable.Range(0, 720).Select(i => 2 * Math.PI * i / 720).Select(t =>
        {
            // A deep notch from the roof, as a guide boss makes, so that not all of the wall is seen from the centroid.
            var x = 18 * Math.Cos(t);
            var y = 15 * Math.Sin(t);
            return new SectionPoint(x, y > 0 && Math.Abs(x) < 9 ? y - (22 * Math.Pow(Math.Cos(x / 9 * Math.PI / 2), 2)) : y);
        })).ValueOrThrow();
        foreach (var section in new[] { AnalyticShapes.Ellipse(20, 14), notched })
        {
            var mesh = Make(Station(1, section, 0), Station(2, AnalyticShapes.Circle(17), 30, 20), Station(3, section, 55, 50)).ToMesh();

            Assert.True(mesh.IsClosed);
            Assert.True(mesh.VolumeMm3 > 0);
        }
    }

    [Fact]
    public void A_notched_section_keeps_its_volume_along_a_straight_port()
    {
        // A U: 40 × 30 with a slot 10 wide and 24 deep from the roof; the centroid lies in the slot's shadow.
        var u = AnalyticShapes.Polygon((0, 0), (40, 0), (40, 30), (25, 30), (25, 6), (15, 6), (15, 30), (0, 30));

        // 40·30 − 10·24 = 960; ring places pass by the corners, which costs a little.
        Assert.Equal(1, Volume(Station(1, u, 0), Station(2, u, 50)) / (960 * 50), 0.01);
    }

    [Fact]
    public void What_cannot_be_a_solid_is_refused_with_one_message()
    {
        var circle = AnalyticShapes.Circle(18);

        Assert.Equal("loft-too-few-stations", Code(Station(1, circle, 0)));
        Assert.Equal("loft-out-of-order", Code(Station(1, circle, 10), Station(2, circle, 10)));
        Assert.Equal("loft-crosses-itself", Code(Station(1, circle, 0), Station(2, circle, 20, 90)));

        static string? Code(params LoftStation[] stations) => Loft.Of("port", stations).TryGet(out _, out var problem) ? null : problem.Code;
    }

    private static double Volume(params LoftStation[] stations) => Make(stations).ToMesh().VolumeMm3;

    private static Loft Make(params LoftStation[] stations) => Loft.Of("port", stations).ValueOrThrow();

    private static LoftStation Station(int number, Outline outline, double atMm, double turnDegrees = 0) => new(number, outline, atMm, Angle.FromDegrees(turnDegrees));
}
