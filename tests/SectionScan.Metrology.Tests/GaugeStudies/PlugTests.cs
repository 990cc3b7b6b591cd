using SectionScan.Metrology.Frames;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.GaugeStudies;

public sealed class PlugTests
{
    // Polygons inscribed in round parts are smaller by some 1e-5.
    private const double Inscribed = 4e-5;

    public static TheoryData<PlugShape, double, double> Shapes => new()
    {
        { PlugShape.Circle, 30, 30 }, { PlugShape.Stadium, 40, 24 }, { PlugShape.Square, 25, 25 }, { PlugShape.Rectangle, 50, 30 },
    };

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Area_perimeter_and_longest_width_are_those_of_the_outline(PlugShape shape, double width, double height)
    {
        var plug = new Plug("p", shape, width, height, 0);

        var facts = PolygonFacts.Of(OutlineOf(plug));

        Assert.Equal(facts.AreaMm2, plug.AreaMm2, Inscribed * plug.AreaMm2);
        Assert.Equal(facts.PerimeterMm, plug.PerimeterMm, Inscribed * plug.PerimeterMm);
    }

    [Theory]
    [MemberData(nameof(Shapes))]
    public void A_plug_turned_anyhow_and_cut_at_its_corners_is_seen_as_it_is(PlugShape shape, double width, double height)
    {
        var plug = new Plug("p", shape, width, height, 0);
        var cut = plug.HasCorners ? Outline.From(Rounded(width, height)).ValueOrThrow() : OutlineOf(plug);

        foreach (var degrees in new[] { 0.0, 17, 45, 90, 133 })
        {
            var seen = plug.Compare(cut.Turned(Angle.FromDegrees(degrees)));

            Assert.Equal(width, seen.LongerMm, 1e-3);
            Assert.Equal(height, seen.ShorterMm, 1e-3);
            Assert.Equal(0, seen.ExcessMm, 1e-3);
            Assert.Equal(0, seen.RoughnessMm, 1e-6);
        }
    }

    [Fact]
    public void A_disc_taken_for_a_square_shows_that_its_sides_are_not_straight()
    {
        // Within ±0.6·r of its middle an arc is a parabola x²/2r: root mean square about its mean (0.6·r)²/2r·2/√45 = 0.054·r, 0.8 mm here.
        var seen = new Plug("p", PlugShape.Square, 30, 30, 0).Compare(AnalyticShapes.Circle(15));

        Assert.True(seen.RoughnessMm > 0.5);
    }

    [Theory]
    [MemberData(nameof(Shapes))]
    public void A_plug_that_is_off_by_an_edge_and_a_scale_reads_too_wide_by_two_edges_and_the_scale_of_its_width(PlugShape shape, double width, double height)
    {
        var plug = new Plug("p", shape, width, height, 0);
        var (edge, scale) = (0.01, 0.001);

        // Steiner's formula: a parallel curve at e encloses A + e·P + π·e² (less at corners that stay sharp; e² is 1e-4 mm²).
        var area = ((plug.AreaMm2 + (edge * plug.PerimeterMm)) * (1 + scale) * (1 + scale));

        Assert.Equal((2 * edge) + (scale * plug.MeanWidthMm), plug.ExcessMm(area), 1e-4);
    }

    [Fact]
    public void A_disc_s_excess_is_that_of_its_diameter()
    {
        var plug = new Plug("p", PlugShape.Circle, 30, 30, 0);

        Assert.Equal(0.02, plug.ExcessMm(Math.PI * 30.02 * 30.02 / 4), 1e-5);
        Assert.Equal(30, plug.MeanWidthMm, 1e-9);
    }

    /// <summary>A rectangle with corners cut at 3 mm, points 0.1 mm apart.</summary>
    private static SectionPoint[] Rounded(double width, double height)
    {
        const double Cut = 3;
        var (w, h) = (width / 2, height / 2);
        (double X, double Y)[] corners = [(w - Cut, -h), (w, Cut - h), (w, h - Cut), (w - Cut, h), (Cut - w, h), (-w, h - Cut), (-w, Cut - h), (Cut - w, -h)];
        var all = new List<SectionPoint>();
        for (var i = 0; i < corners.Length; i++)
        {
            var (from, to) = (corners[i], corners[(i + 1) % corners.Length]);
            var steps = (int)(Math.Max(Math.Abs(to.X - from.X), Math.Abs(to.Y - from.Y)) * 10);
            all.AddRange(Enumerable.Range(0, steps).Select(k => new SectionPoint(from.X + ((to.X - from.X) * k / steps), from.Y + ((to.Y - from.Y) * k / steps))));
        }

        return [.. all];
    }

    private static Outline OutlineOf(Plug plug) => plug.Shape switch
    {
        PlugShape.Circle => AnalyticShapes.Circle(plug.WidthMm / 2),
        PlugShape.Stadium => AnalyticShapes.Stadium(plug.HeightMm / 2, plug.WidthMm - plug.HeightMm),
        _ => AnalyticShapes.Rectangle(plug.WidthMm, plug.HeightMm),
    };
}
