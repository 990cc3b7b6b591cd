using SectionScan.Drawings.Outlines;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Sections;

namespace SectionScan.Drawings.Tests.Outlines;

public sealed class SvgOutlinesTests
{
    private const double ToleranceMm2 = 0.024; // as for DXF: chords stray by at most 0.0002 mm

    public static TheoryData<string, double> Shapes => new()
    {
        { "stadium-path.svg", (Math.PI * 14 * 14) + (12 * 28) },
        { "stadium-in-inches.svg", ((Math.PI * 20 * 20) + (20 * 40)) * 0.508 * 0.508 }, // 2 in over 100 units
        { "arch-curves.svg", 720 * 1 }, // the cubic of arch-spline-line.dxf
        { "parabola.svg", 400 }, // 40 × 10 below the base line, and a hump of 2/3·20·5 up and one down
    };

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Every_kind_of_line_encloses_the_area_of_its_closed_form(string file, double areaMm2) =>
        Assert.Equal(areaMm2, PolygonMoments.Of(DrawnFiles.Read(file).ValueOrThrow().Outline.Points).AreaMm2, ToleranceMm2);

    [Fact]
    public void Up_in_the_drawing_is_up_in_the_section()
    {
        // The hump of the arch points up on the screen, where y counts down.
        var outline = DrawnFiles.Read("arch-curves.svg").ValueOrThrow().Outline;

        Assert.Equal(-35, outline.Points.ToArray().Min(p => p.YMm), 1e-6);
        Assert.Equal(-12.5, outline.Points.ToArray().Max(p => p.YMm), 1e-3); // 30·3/4 above the line
    }

    [Fact]
    public void Open_lines_that_meet_join_although_each_has_an_id()
    {
        var file = DrawnFiles.Read("stadium-of-four-paths.svg").ValueOrThrow();

        Assert.Equal((Math.PI * 14 * 14) + (12 * 28), PolygonMoments.Of(file.Outline.Points).AreaMm2, ToleranceMm2);
    }

    [Fact]
    public void A_layer_is_chosen_by_its_groups_id()
    {
        var file = DrawnFiles.Read("two-groups.svg", new(Layer: "outline")).ValueOrThrow();

        Assert.Equal(30 * 20, PolygonMoments.Of(file.Outline.Points).AreaMm2, 1e-6);
    }

    [Theory]
    [InlineData("pixels.svg", "drawing-without-unit", "25.4")]
    [InlineData("broken-path.svg", "drawing-broken", "Line 2: <path>")]
    [InlineData("broken-xml.svg", "drawing-broken", "not XML")]
    [InlineData("trap.svg", "drawing-broken", "not XML")]
    public void A_drawing_that_gives_no_outline_says_what_is_wrong_with_it(string file, string code, string words)
    {
        Assert.False(DrawnFiles.Read(file).TryGet(out _, out var problem));

        Assert.Equal(code, problem.Code);
        Assert.Contains(words, problem.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_is_written_is_read_back(bool isInch)
    {
        for (var number = 0; number < 20; number++)
        {
            var outline = SampleSections.Blob(number, 400);
            using var stream = new MemoryStream();
            OutlineSvg.Write(outline, "A section", isInch, stream);

            var back = OutlineFile.Read(System.Text.Encoding.UTF8.GetString(stream.ToArray()), "a.svg", new()).ValueOrThrow().Outline;

            // Six decimals of a unit, twice: in the corners and in the frame.
            Assert.All(outline.Points.ToArray().Zip(back.Points.ToArray()), pair => Assert.Equal(0, pair.First.DistanceTo(pair.Second), isInch ? 3e-5 : 2e-6));
            Assert.Equal(outline.Count, back.Count);
        }
    }
}
