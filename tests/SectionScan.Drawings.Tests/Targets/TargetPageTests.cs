using System.Globalization;
using System.Xml.Linq;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Targets;

namespace SectionScan.Drawings.Tests.Targets;

public sealed class TargetPageTests
{
    public static TheoryData<TargetKind, string> All
    {
        get
        {
            var data = new TheoryData<TargetKind, string>();
            foreach (var kind in Enum.GetValues<TargetKind>())
            {
                data.Add(kind, "a4");
                data.Add(kind, "letter");
            }

            return data;
        }
    }

    [Theory]
    [InlineData(TargetKind.Sheet, "a4", "297mm", "210mm", "0 0 297 210")]
    [InlineData(TargetKind.Sheet, "letter", "279.4mm", "215.9mm", "0 0 279.4 215.9")]
    [InlineData(TargetKind.Card, "a4", "210mm", "297mm", "0 0 210 297")]
    [InlineData(TargetKind.StationTags, "letter", "215.9mm", "279.4mm", "0 0 215.9 279.4")]
    public void The_SVG_is_as_large_as_the_paper_with_one_unit_a_millimetre(
        TargetKind kind, string paper, string width, string height, string viewBox)
    {
        var svg = Svg(kind, paper);

        Assert.Equal(width, svg.Attribute("width")?.Value);
        Assert.Equal(height, svg.Attribute("height")?.Value);
        Assert.Equal(viewBox, svg.Attribute("viewBox")?.Value);
    }

    [Theory]
    [InlineData(TargetKind.Sheet, "a4", 260, 180)]
    [InlineData(TargetKind.Sheet, "letter", 260, 180)]
    [InlineData(TargetKind.Card, "a4", 80, 50)]
    public void The_board_in_the_SVG_is_one_filled_path_of_the_nominal_size(TargetKind kind, string paper, double width, double height)
    {
        var board = Svg(kind, paper).Elements().Single(group => group.Attribute("class")?.Value == "board").Elements().Single();
        var numbers = board.Attribute("d")!.Value.Split(['M', 'L', 'Z', ' '], StringSplitOptions.RemoveEmptyEntries)
            .Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToArray();
        var (xs, ys) = (numbers.Where((_, i) => i % 2 == 0).ToArray(), numbers.Where((_, i) => i % 2 == 1).ToArray());

        // Written to a tenth of a micrometre.
        Assert.Equal(width, xs.Max() - xs.Min(), 0.0002);
        Assert.Equal(height, ys.Max() - ys.Min(), 0.0002);
        Assert.Equal("evenodd", board.Attribute("fill-rule")?.Value);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_page_says_how_to_print_and_how_to_check(TargetKind kind, string paper)
    {
        var page = TargetPage.Build(kind, PaperSize.FromName(paper)!);

        var text = string.Join(' ', page.Items.OfType<TextItem>().Select(item => item.Text));

        Assert.Contains("100 %", text, StringComparison.Ordinal);
        Assert.Contains("“actual size”", text, StringComparison.Ordinal);
        Assert.True(kind == TargetKind.StationTags || text.Contains("--print-ratio X,Y", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_copies_in_calibration_are_what_the_program_draws(TargetKind kind, string paper)
    {
        var size = PaperSize.FromName(paper)!;
        var name = Path.Combine(CalibrationFolder(), TargetPage.FileName(kind, size));
        var page = TargetPage.Build(kind, size);
        using var pdf = new MemoryStream();
        using var svg = new MemoryStream();

        PdfWriter.Write([page], pdf);
        SvgWriter.Write(page, svg);

        Assert.True(pdf.ToArray().AsSpan().SequenceEqual(File.ReadAllBytes(name + ".pdf")), $"{name}.pdf is out of date.");
        Assert.True(svg.ToArray().AsSpan().SequenceEqual(File.ReadAllBytes(name + ".svg")), $"{name}.svg is out of date.");
    }

    [Fact]
    public void Paper_that_is_too_small_is_refused()
    {
        var a5 = new PaperSize("a5", 148, 210);

        Assert.All(Enum.GetValues<TargetKind>(), kind => Assert.Throws<ArgumentException>(() => TargetPage.Build(kind, a5)));
    }

    private static XElement Svg(TargetKind kind, string paper)
    {
        using var stream = new MemoryStream();
        SvgWriter.Write(TargetPage.Build(kind, PaperSize.FromName(paper)!), stream);
        stream.Position = 0;
        return XDocument.Load(stream).Root!;
    }

    private static string CalibrationFolder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "SectionScan.sln")))
        {
            folder = folder.Parent;
        }

        Assert.NotNull(folder);
        return Path.Combine(folder.FullName, "calibration");
    }
}
