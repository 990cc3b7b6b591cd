using System.Text;
using System.Xml.Linq;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Drawings.Tests.Formats;

public sealed class SvgWriterTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void One_user_unit_is_one_millimetre()
    {
        var root = SvgWriter.ToElement(new PageBuilder(210.5, 297, "page").Build());

        Assert.Equal("210.5mm", root.Attribute("width")?.Value);
        Assert.Equal("0 0 210.5 297", root.Attribute("viewBox")?.Value);
    }

    [Fact]
    public void A_path_keeps_its_corners_its_pen_and_its_fill()
    {
        var page = new PageBuilder(50, 50, "page") { Layer = "outline" };
        page.Rectangle(1, 2, 3, 4.5, new Colour(255, 128, 0), new Pen(Colour.Black, 0.25) { DashesMm = [2, 1.5] });

        var path = SvgWriter.ToElement(page.Build()).Descendants(Svg + "path").Single();

        Assert.Equal("M1 2L4 2L4 6.5L1 6.5Z", path.Attribute("d")?.Value);
        Assert.Equal("#ff8000", path.Attribute("fill")?.Value);
        Assert.Equal("#000000", path.Attribute("stroke")?.Value);
        Assert.Equal("0.25", path.Attribute("stroke-width")?.Value);
        Assert.Equal("2 1.5", path.Attribute("stroke-dasharray")?.Value);
        Assert.Equal("outline", path.Parent?.Attribute("class")?.Value);
    }

    [Fact]
    public void Text_carries_its_words_for_screen_readers()
    {
        var page = new PageBuilder(50, 50, "page");
        page.Text(new(5, 5), "38.42 ± 0.06 mm", 2.5, Colour.Black, TextAnchor.Middle, Angle.FromDegrees(90));

        var path = SvgWriter.ToElement(page.Build()).Descendants(Svg + "path").Single();

        Assert.Equal("38.42 ± 0.06 mm", path.Attribute("aria-label")?.Value);
    }

    [Fact]
    public void A_title_with_markup_in_it_stays_text()
    {
        using var stream = new MemoryStream();
        SvgWriter.Write(new PageBuilder(50, 50, "<script>alert(1)</script> & more").Build(), stream);

        var text = Encoding.UTF8.GetString(stream.ToArray());

        Assert.Contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; more", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\r", text, StringComparison.Ordinal);
        Assert.EndsWith("</svg>\n", text, StringComparison.Ordinal);
    }
}
