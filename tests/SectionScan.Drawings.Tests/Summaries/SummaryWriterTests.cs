using System.Text;
using System.Xml.Linq;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Summaries;

namespace SectionScan.Drawings.Tests.Summaries;

public sealed class SummaryWriterTests
{
    private const string Hostile = "<script>alert(\"1\")</script> & 'more'";

    [Fact]
    public void All_text_is_escaped_wherever_it_stands()
    {
        var page = new SummaryPage(Hostile, Hostile, [new(Hostile,
        [
            new ParagraphBlock(Hostile),
            new NoteBlock(Hostile),
            new NoteBlock(Hostile, IsCaution: true),
            new TableBlock(Hostile, [Hostile, "x"], [[Hostile, "1"]]),
            new DrawingBlock([new PageBuilder(10, 10, Hostile).Build()], Hostile),
            new PictureBlock("a.png", Hostile, Hostile),
            new FilesBlock([("a.csv", Hostile)]),
        ])])
        { Footer = Hostile };

        var html = Written(page);

        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("alert(\"1\")", html.Replace("<title>&lt;script&gt;alert(\"1\")", string.Empty, StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void The_file_needs_nothing_from_elsewhere()
    {
        var html = Written(Sample());

        // The name of the SVG namespace is the only address in it.
        Assert.DoesNotContain("http", html.Replace("http://www.w3.org/2000/svg", string.Empty, StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<link", html, StringComparison.Ordinal);
        Assert.Contains("prefers-color-scheme: dark", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Elements_are_nested_and_closed()
    {
        // HTML's void elements closed by hand; all else must then be well-formed XML.
        var body = Written(Sample());
        body = body[body.IndexOf("<body>", StringComparison.Ordinal)..body.IndexOf("</html>", StringComparison.Ordinal)];
        var xml = XElement.Parse(System.Text.RegularExpressions.Regex.Replace(body, "<(img[^>]*)>", "<$1/>"));

        Assert.Equal(["header", "main", "footer"], xml.Elements().Select(element => element.Name.LocalName));
        Assert.Equal(3, xml.Descendants("section").Count());
        Assert.Single(xml.Descendants("h1"));
        Assert.Equal(
            xml.Descendants("a").Select(a => a.Attribute("href")!.Value).Where(href => href.StartsWith('#')),
            xml.Descendants("h2").Select(h => "#" + h.Attribute("id")!.Value));
    }

    [Fact]
    public void Numbers_stand_to_the_right_and_words_to_the_left()
    {
        var html = Written(Sample());

        Assert.Contains("<th scope=\"col\" class=\"number\">area</th>", html, StringComparison.Ordinal);
        Assert.Contains("<th scope=\"col\">remark</th>", html, StringComparison.Ordinal);
        Assert.Contains("<td class=\"number\">1262.2 ± 4.2 mm²</td>".Replace("±", "&#177;", StringComparison.Ordinal).Replace("²", "&#178;", StringComparison.Ordinal), html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_with_unusual_characters_is_linked()
        => Assert.Contains("src=\"a%20b/c%23d%3Ae.png\"", Written(Picture("a b/c#d:e.png")), StringComparison.Ordinal);

    [Theory]
    [InlineData("../secret.png")]
    [InlineData("/etc/passwd")]
    [InlineData("a/../../b.png")]
    [InlineData("a\\b.png")]
    [InlineData("")]
    public void A_path_that_leaves_the_folder_is_refused(string path)
        => Assert.Throws<ArgumentException>(() => Written(Picture(path)));

    [Fact]
    public void A_row_of_the_wrong_length_is_refused()
    {
        var page = new SummaryPage("t", "i", [new("h", [new TableBlock("c", ["a", "b"], [["1"]])])]);

        Assert.Throws<ArgumentException>(() => Written(page));
    }

    private static SummaryPage Picture(string path) => new("t", "i", [new("h", [new PictureBlock(path, "d", "c")])]);

    private static SummaryPage Sample() => new(
        "Bramble 480 twin",
        "Three ports.",
        [
            new("Photographs", [new PictureBlock("p01.jpg", "slices on the sheet", "Exemplar")]),
            new("Sections",
            [
                new TableBlock("Areas", ["station", "area", "remark"], [["1", "1262.2 ± 4.2 mm²", "fine"], ["2", "−3", string.Empty]]),
                new DrawingBlock([new PageBuilder(10, 10, "Station 1").Build()], "Station 1"),
            ]),
            new("Files", [new NoteBlock("Keep them."), new FilesBlock([("a.csv", "the outline")])]),
        ])
    { Footer = "SectionScan" };

    private static string Written(SummaryPage page)
    {
        using var stream = new MemoryStream();
        SummaryWriter.Write(page, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
