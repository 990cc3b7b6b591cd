using SectionScan.Drawings.Outlines;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;

namespace SectionScan.Drawings.Tests.Outlines;

/// <summary>Small files written by hand, one for each kind of entity. Expected areas are closed forms; the files lie in
/// <c>Outlines/Drawn</c>.</summary>
public sealed class DxfOutlinesTests
{
    // Chords stray by at most 0.0002 mm: on 120 mm of outline less than 0.024 mm² in all.
    private const double ToleranceMm2 = 0.024;

    public static TheoryData<string, double> Shapes => new()
    {
        { "circle.dxf", Math.PI * 18 * 18 },
        { "circle-inch.dxf", Math.PI * 19.05 * 19.05 }, // 0.75 in
        { "stadium-lwpolyline.dxf", (Math.PI * 14 * 14) + (12 * 28) },
        { "stadium-lines-arcs.dxf", (Math.PI * 14 * 14) + (12 * 28) },
        { "d-section-polyline.dxf", (Math.PI * 18 * 18) - Segment(18, 8) },
        { "ellipse.dxf", Math.PI * 20 * 14 },
        { "circle-spline.dxf", Math.PI * 20 * 20 }, // an exact circle as a rational spline of degree 2: Piegl and Tiller, section 7.5
        { "arch-spline-line.dxf", 720 }, // ∫ y dx of the cubic (0,0) (0,30) (40,30) (40,0): 21600·∫ t²(1−t)² dt = 21600/30
        { "half-from-below.dxf", Math.PI * 14 * 14 / 2 },
    };

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Every_kind_of_entity_encloses_the_area_of_its_closed_form(string file, double areaMm2)
    {
        var outline = DrawnFiles.Read(file).ValueOrThrow().Outline;

        Assert.Equal(areaMm2, PolygonMoments.Of(outline.Points).AreaMm2, ToleranceMm2);
        Assert.InRange(outline.Count, 360, 2000);
    }

    [Fact]
    public void A_circle_lies_where_it_was_drawn()
    {
        var outline = DrawnFiles.Read("circle.dxf").ValueOrThrow().Outline;

        Assert.All(outline.Points.ToArray(), point => Assert.Equal(18, point.DistanceTo(new(5, -3)), 1e-9));
    }

    [Fact]
    public void What_is_drawn_from_below_is_mirrored_to_where_it_is_seen()
    {
        // The arc's centre (−10, 0) is written in a frame whose x points the other way.
        var outline = DrawnFiles.Read("half-from-below.dxf").ValueOrThrow().Outline;

        Assert.Equal(10, outline.Points.ToArray().Average(p => p.XMm), 0.1);
        Assert.Equal(-4, outline.Points.ToArray().Min(p => p.XMm), 1e-9);
    }

    [Theory]
    [InlineData("broken-cut-off.dxf", "drawing-broken", "breaks off")]
    [InlineData("broken-number.dxf", "drawing-broken", "eighteen")]
    [InlineData("broken-code.dxf", "drawing-broken", "forty")]
    [InlineData("broken-no-radius.dxf", "drawing-broken", "CIRCLE")]
    [InlineData("broken-text.dxf", "drawing-broken", "not a DXF file")]
    [InlineData("broken-spline.dxf", "drawing-spline-unusable", "do not belong together")]
    [InlineData("fit-points-only-spline.dxf", "drawing-spline-unusable", "no control points")]
    [InlineData("tilted.dxf", "drawing-not-flat", "CIRCLE")]
    [InlineData("circle-without-unit.dxf", "drawing-without-unit", "25.4")]
    [InlineData("open.dxf", "drawing-without-outline", "0.35 mm")]
    [InlineData("only-text.dxf", "drawing-without-outline", "holds no line")]
    [InlineData("branching.dxf", "drawing-branches", "(10, 0)")]
    [InlineData("two-outlines.dxf", "drawing-with-several-outlines", "1. 28000 mm² on layer \"frame\"; 2. 1017.9 mm² on layer \"port\"")]
    public void A_drawing_that_gives_no_outline_says_what_is_wrong_with_it(string file, string code, string words)
    {
        Assert.False(DrawnFiles.Read(file).TryGet(out _, out var problem));

        Assert.Equal(code, problem.Code);
        Assert.Contains(words, problem.What, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Remedy);
    }

    [Fact]
    public void A_binary_drawing_is_refused() =>
        Assert.Equal("drawing-broken", ProblemOf(DxfOutlines.Read("Binary DXF\r\n\u001a\0\0\0", "a.dxf")).Code);

    [Fact]
    public void A_person_can_name_unit_layer_contour_and_gap()
    {
        Assert.Equal(Math.PI * 18 * 18 * 25.4 * 25.4, Area(DrawnFiles.Read("circle-without-unit.dxf", new(MmPerUnit: 25.4))), 1.0);
        Assert.Equal(Math.PI * 18 * 18, Area(DrawnFiles.Read("two-outlines.dxf", new(Layer: "PORT"))), ToleranceMm2);
        Assert.Equal(200 * 140, Area(DrawnFiles.Read("two-outlines.dxf", new(Contour: 1))), 1e-6);
        Assert.Equal(Math.PI * 18 * 18, Area(DrawnFiles.Read("two-outlines.dxf", new(Contour: 2))), ToleranceMm2);
        Assert.Equal(600, Area(DrawnFiles.Read("open.dxf", new(GapMm: 0.4))), 6);
        Assert.Equal("drawing-without-such-outline", ProblemOf(DrawnFiles.Read("two-outlines.dxf", new(Layer: "nothing"))).Code);
        Assert.Equal("drawing-without-such-outline", ProblemOf(DrawnFiles.Read("two-outlines.dxf", new(Contour: 3))).Code);
    }

    [Fact]
    public void Centre_lines_beside_the_outline_are_left_out_and_told()
    {
        var chosen = DrawnFiles.Read("centre-lines.dxf").ValueOrThrow();

        Assert.Equal(("port", 2), (chosen.Layer, chosen.LinesLeftOpen));
    }

    [Fact]
    public void Whatever_is_cut_off_or_changed_in_a_drawing_no_exception_escapes()
    {
        foreach (var file in Directory.GetFiles(DrawnFiles.Folder, "*.dxf"))
        {
            var text = File.ReadAllText(file);
            var random = new Random(480);
            for (var i = 0; i < 60; i++)
            {
                var broken = text.ToCharArray();
                broken[random.Next(broken.Length)] = "0\n9-.xE"[random.Next(7)];
                var read = DxfOutlines.Read(new string(broken)[..random.Next(broken.Length)], file).Then(drawn => new OutlineChoice(1).Take(drawn, file));
                Assert.True(read.IsSuccess || ProblemOf(read).Remedy.Length > 0);
                _ = DxfOutlines.Read(new string(broken), file).Then(drawn => new OutlineChoice(1).Take(drawn, file));
            }
        }
    }

    private static double Area(Result<ChosenOutline> read) => PolygonMoments.Of(read.ValueOrThrow().Outline.Points).AreaMm2;

    private static Problem ProblemOf<T>(Result<T> result)
        where T : notnull
    {
        Assert.False(result.TryGet(out _, out var problem));
        return problem;
    }

    private static double Segment(double radius, double height)
    {
        var half = Math.Acos(1 - (height / radius));
        return radius * radius * (half - (Math.Sin(2 * half) / 2));
    }
}
