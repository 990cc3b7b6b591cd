using System.Text;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Tests.Formats;

public sealed class PdfWriterTests
{
    [Fact]
    public void The_same_pages_give_the_same_bytes()
    {
        var first = Written([Sample("a")]);
        var second = Written([Sample("a")]);

        Assert.Equal(first, second);
    }

    [Fact]
    public void Another_page_has_another_identifier()
    {
        var first = Text(Written([Sample("a")]));
        var second = Text(Written([Sample("b")]));

        Assert.NotEqual(Identifier(first), Identifier(second));
    }

    [Fact]
    public void Each_page_keeps_its_own_size()
    {
        var text = Text(Written([Sample("a"), new PageBuilder(420, 297, "wide").Build()]));

        // 100 × 50 mm and 420 × 297 mm in points of 1/72 inch.
        Assert.Contains("/MediaBox[0 0 283.465 141.732]", text, StringComparison.Ordinal);
        Assert.Contains("/MediaBox[0 0 1190.551 841.89]", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Areas_are_filled_by_the_odd_rule_and_separate_lines_stay_separate()
    {
        var page = new PageBuilder(100, 50, "holes");
        page.Path([Contour.Rectangle(10, 10, 20, 20), Contour.Rectangle(15, 15, 10, 10)], Colour.Black, null);
        page.Lines([(new(1, 1), new(2, 1)), (new(3, 3), new(4, 3))], new(Colour.Black, 0.2));

        var operators = Text(Written([page.Build()])).Split('\n').Select(line => line.Trim().Split(' ')[^1]).ToArray();

        Assert.Contains("f*", operators);

        // Two rectangles and two lines each begin anew.
        Assert.Equal(4, operators.Count(o => o == "m"));
    }

    [Fact]
    public void A_date_is_stamped_only_when_given()
    {
        using var stream = new MemoryStream();
        PdfWriter.Write([Sample("a")], stream, createdAt: new DateTimeOffset(2026, 5, 4, 3, 2, 1, TimeSpan.Zero));

        Assert.Contains("/CreationDate(D:20260504030201", Text(stream.ToArray()), StringComparison.Ordinal);
        Assert.Contains("/CreationDate(D:20000101000000", Text(Written([Sample("a")])), StringComparison.Ordinal);
    }

    [Fact]
    public void A_document_without_pages_is_refused()
        => Assert.Throws<ArgumentException>(() => Written([]));

    private static Page Sample(string text)
    {
        var page = new PageBuilder(100, 50, "sample");
        page.Text(new(10, 10), text, 3, Colour.Black);
        return page.Build();
    }

    private static byte[] Written(IReadOnlyList<Page> pages)
    {
        using var stream = new MemoryStream();
        PdfWriter.Write(pages, stream);
        return stream.ToArray();
    }

    private static string Text(byte[] pdf) => Encoding.Latin1.GetString(pdf);

    private static string Identifier(string pdf) => pdf.Substring(pdf.IndexOf("<xmpMM:DocumentID>", StringComparison.Ordinal), 59);
}
