using System.Text;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Summaries;
using SectionScan.Porting.GasSpeeds;
using SectionScan.Testing.Truth;

namespace SectionScan.Drawings.Tests.Summaries;

public sealed class SummaryPaperTests
{
    private static readonly byte[] Jpeg = File.ReadAllBytes(SamplePhotos.PhotoPath("p01"));

    [Fact]
    public void A_long_table_runs_over_sheets_with_its_head_on_each()
    {
        var rows = Enumerable.Range(1, 120).Select(i => (IReadOnlyList<string>)[$"row {i}", "so many words that no two strips of this table would fit beside each other"]).ToList();

        var sheets = SummaryPaper.Layout(new("Job", "Intro.", [new("Numbers", [new TableBlock("All.", ["Station", "Area"], rows)])]), PaperSize.A4);

        Assert.True(sheets.Count > 2);
        var texts = sheets.Select(Texts).ToList();
        Assert.Equal(rows.Select(row => row[0]), texts.SelectMany(each => each).Where(text => text.StartsWith("row ", StringComparison.Ordinal)));
        Assert.All(texts.Where(each => each.Any(text => text.StartsWith("row ", StringComparison.Ordinal))), each => Assert.Contains("Station", each));
        Assert.All(texts.Select((each, i) => (each, i)), each => Assert.Contains($"{each.i + 1} of {sheets.Count}", each.each));
    }

    [Fact]
    public void A_short_table_is_not_parted_and_a_long_narrow_one_stands_in_strips()
    {
        var rows = Enumerable.Range(1, 15).Select(i => (IReadOnlyList<string>)[$"row {i}", "1.0"]).ToList();
        var filler = Enumerable.Repeat<SummaryBlock>(new ParagraphBlock("Words."), 30);

        var sheets = SummaryPaper.Layout(new("Job", "Intro.", [new("Numbers", [.. filler, new TableBlock("All.", ["Cause", "u"], rows)])]), PaperSize.A4);

        var sheet = Assert.Single(sheets, each => Texts(each).Any(text => text.StartsWith("row ", StringComparison.Ordinal)));
        Assert.Equal(15, Texts(sheet).Count(text => text.StartsWith("row ", StringComparison.Ordinal)));

        // Three strips of five rows.
        Assert.Equal(5, sheet.Items.OfType<TextItem>().Where(item => item.Text.StartsWith("row ", StringComparison.Ordinal)).Select(item => Math.Round(item.Position.YMm, 6)).Distinct().Count());
        Assert.Equal(3, Texts(sheet).Count(text => text == "Cause"));
    }

    [Fact]
    public void A_heading_and_the_sentence_below_it_go_with_their_table_to_the_next_sheet()
    {
        // However far down a sheet the heading comes: 40 to 62 lines of filling.
        for (var lines = 40; lines < 62; lines++)
        {
            var filler = Enumerable.Repeat<SummaryBlock>(new ParagraphBlock("Words."), lines);
            var rows = Enumerable.Range(1, 8).Select(i => (IReadOnlyList<string>)[$"row {i}", "1.0"]).ToList();

            var sheets = SummaryPaper.Layout(
                new("Job", "Intro.", [new("Before", [.. filler]), new("Numbers", [new ParagraphBlock("The table:"), new TableBlock("All.", ["Cause", "u"], rows)])]), PaperSize.A4);

            var sheet = Assert.Single(sheets, each => Texts(each).Contains("Numbers"));
            Assert.Contains("The table:", Texts(sheet));
            Assert.Contains("row 1", Texts(sheet));
        }
    }

    [Theory]
    [InlineData(85, 2)]
    [InlineData(66, 3)]
    [InlineData(150, 1)]
    public void Drawings_stand_side_by_side_as_many_as_stay_readable_and_none_is_parted(double widthMm, int columns)
    {
        var drawings = Enumerable.Range(0, 8).Select(i =>
        {
            var page = new PageBuilder(widthMm, 80, $"drawing {i}");
            page.Text(new(widthMm / 2, 40), $"drawing {i}", 2.5, Colour.Black);
            page.Rectangle(0, 0, widthMm, 80, null, new(Colour.Black, 0.2));
            return page.Build();
        }).ToList();

        var sheets = SummaryPaper.Layout(new("Job", "Intro.", [new("Drawings", [new DrawingBlock(drawings, "Eight.")])]), PaperSize.A4);

        var names = sheets.SelectMany(sheet => sheet.Items.OfType<TextItem>()).Where(item => item.Text.StartsWith("drawing ", StringComparison.Ordinal)).ToList();
        Assert.Equal(8, names.Count);
        Assert.Equal(columns, names.Select(item => Math.Round(item.Position.XMm, 3)).Distinct().Count());

        // 2.5 mm letters at 0.8 of their size are the smallest that a report sets.
        Assert.All(names, item => Assert.InRange(item.CapHeightMm, 2.0, 2.5));
        Assert.All(sheets, sheet => Assert.All(
            sheet.Items.OfType<PathItem>().SelectMany(item => item.Contours).SelectMany(contour => contour.Points), p => Inside(sheet, p)));
    }

    [Fact]
    public void A_heading_stands_on_the_sheet_of_what_begins_below_it()
    {
        var tall = new PageBuilder(150, 200, "tall");
        tall.Text(new(10, 10), "tall drawing", 2.5, Colour.Black);
        var filler = Enumerable.Repeat<SummaryBlock>(new ParagraphBlock("Words."), 20).ToList();

        var sheets = SummaryPaper.Layout(
            new("Job", "Intro.", [new("First", filler), new("Second", [new DrawingBlock([tall.Build()], "Tall.")])]), PaperSize.A4);

        var sheet = Assert.Single(sheets, each => Texts(each).Contains("Second"));
        Assert.Contains("tall drawing", Texts(sheet));
        Assert.Contains("Tall.", Texts(sheet));
    }

    [Fact]
    public void Nothing_runs_off_the_sheet()
    {
        var wide = Enumerable.Range(0, 9).Select(i => $"A heading of several words {i}").ToList();
        var cells = Enumerable.Range(0, 9).Select(i => $"some rather long cell with words in it {i}").ToList();
        var drawing = new PageBuilder(400, 300, "large");
        drawing.Rectangle(0, 0, 400, 300, null, new(Colour.Black, 0.2));
        var sheets = SummaryPaper.Layout(
            new("A title that is so long that it must be broken into several lines of the cover", string.Join(' ', Enumerable.Repeat("word", 900)),
            [
                new("One", [new TableBlock("Wide.", wide, [cells]), new DrawingBlock([drawing.Build(), drawing.Build()], "Two."), new PhotographBlock(Jpeg, "photo", "A photo."), new NoteBlock(string.Join(' ', cells), IsCaution: true)]),
            ])
            { Facts = [("Head", "Bramble 480 twin"), ("Date", "2026-11-26")] },
            PaperSize.A4);

        foreach (var sheet in sheets)
        {
            Assert.All(sheet.Items.OfType<PathItem>().SelectMany(item => item.Contours).SelectMany(contour => contour.Points), p => Inside(sheet, p));
            Assert.All(sheet.Items.OfType<TextItem>().SelectMany(item => StrokeFont.ToPath(item).Contours).SelectMany(contour => contour.Points), p => Inside(sheet, p));
            Assert.All(sheet.Items.OfType<PictureItem>(), item => Inside(sheet, new(item.LeftMm + item.WidthMm, item.TopMm + item.HeightMm)));
        }

        Assert.Contains("Bramble 480 twin", Texts(sheets[0]));
    }

    [Fact]
    public void A_photograph_keeps_its_shape_and_comes_into_both_files()
    {
        var page = new SummaryPage("Job", "Intro.", [new("Photos", [new PhotographBlock(Jpeg, "slices", "Slices.")])]);
        var sheets = SummaryPaper.Layout(page, PaperSize.A4);

        var picture = sheets.SelectMany(sheet => sheet.Items).OfType<PictureItem>().Single();
        using var pdf = new MemoryStream();
        PdfWriter.Write(sheets, pdf);
        using var html = new MemoryStream();
        SummaryWriter.Write(page, html);

        // p01.jpg has 4032 × 3024 pixels (its truth file).
        Assert.Equal((4032, 3024), JpegSize.Of(Jpeg));
        Assert.Equal(4032 / 3024.0, picture.WidthMm / picture.HeightMm, 9);
        Assert.True(pdf.ToArray().AsSpan().IndexOf(Jpeg.AsSpan(2000, 64)) > 0);
        Assert.Contains("data:image/jpeg;base64," + Convert.ToBase64String(Jpeg)[..200], Encoding.UTF8.GetString(html.ToArray()), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_JPEG_has_no_size() => Assert.Throws<ArgumentException>(() => JpegSize.Of("This is a shopping list."u8));

    [Fact]
    public void The_lettering_can_write_every_formula() =>
        Assert.All(WorkedFormulas.All, each => Assert.True(StrokeFont.CanWrite($"{each.Quantity} {each.Formula} {each.Source} {each.Example} {each.Unit}"), each.Formula));

    [Fact]
    public void The_same_report_is_the_same_file_compressed_or_not()
    {
        var sheets = SummaryPaper.Layout(new("Job", "Intro.", [new("Photos", [new PhotographBlock(Jpeg, "slices", "Slices.")])]), PaperSize.A4);

        Assert.Equal(Written(true), Written(true));
        Assert.True(Written(true).Length < Written(false).Length);

        byte[] Written(bool isCompressed)
        {
            using var stream = new MemoryStream();
            PdfWriter.Write(sheets, stream, isCompressed: isCompressed);
            return stream.ToArray();
        }
    }

    private static List<string> Texts(Page page) => [.. page.Items.OfType<TextItem>().Select(item => item.Text)];

    private static void Inside(Page page, PagePoint p) =>
        Assert.True(p.XMm >= 0 && p.XMm <= page.WidthMm && p.YMm >= 0 && p.YMm <= page.HeightMm, $"{p} lies off the sheet.");
}
