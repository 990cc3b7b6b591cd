using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Formats;

/// <summary>Writes a page as SVG 1.1 at true size: width and height in mm, one user unit per millimetre.</summary>
public static class SvgWriter
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>Writes the page as a document of its own, UTF-8, lines ended by \n. The stream stays open.</summary>
    public static void Write(Page page, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var settings = new XmlWriterSettings
        {
            Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            Indent = true,
            NewLineChars = "\n",
            CloseOutput = false,
        };
        using (var writer = XmlWriter.Create(stream, settings))
        {
            new XDocument(ToElement(page)).Save(writer);
        }

        stream.Write("\n"u8);
    }

    /// <summary>The page as one <c>svg</c> element, for a file of its own or for a place within an HTML page. It holds no ids, so
    /// several may stand in one document.</summary>
    public static XElement ToElement(Page page)
    {
        ArgumentNullException.ThrowIfNull(page);
        var root = new XElement(
            Svg + "svg",
            new XAttribute("version", "1.1"),
            new XAttribute("width", Number(page.WidthMm) + "mm"),
            new XAttribute("height", Number(page.HeightMm) + "mm"),
            new XAttribute("viewBox", $"0 0 {Number(page.WidthMm)} {Number(page.HeightMm)}"),
            new XAttribute("role", "img"),
            new XElement(Svg + "title", page.Title));
        XElement? group = null;
        foreach (var item in page.Items)
        {
            if (group?.Attribute("class")?.Value != item.Layer)
            {
                group = new XElement(Svg + "g", new XAttribute("class", item.Layer));
                root.Add(group);
            }

            group.Add(Element(item));
        }

        return root;
    }

    private static XElement Element(PageItem item) => item switch
    {
        PathItem path => Path(path),
        TextItem text => Text(text),
        PictureItem picture => Picture(picture),
        _ => throw new ArgumentException($"No SVG for a {item.GetType().Name}.", nameof(item)),
    };

    private static XElement Picture(PictureItem item) => new(
        Svg + "image",
        new XAttribute("x", Number(item.LeftMm)),
        new XAttribute("y", Number(item.TopMm)),
        new XAttribute("width", Number(item.WidthMm)),
        new XAttribute("height", Number(item.HeightMm)),
        new XAttribute("aria-label", item.Description),
        new XAttribute("href", "data:image/jpeg;base64," + Convert.ToBase64String(item.Jpeg.Span)));

    private static XElement Text(TextItem item)
    {
        var element = Path(StrokeFont.ToPath(item));
        element.Add(new XAttribute("role", "img"), new XAttribute("aria-label", item.Text));
        return element;
    }

    private static XElement Path(PathItem item)
    {
        var element = new XElement(Svg + "path", new XAttribute("d", Data(item.Contours)), new XAttribute("fill", item.Fill?.ToHex() ?? "none"));
        if (item.Fill is not null)
        {
            element.Add(new XAttribute("fill-rule", "evenodd"));
        }

        if (item.Stroke is { } pen)
        {
            element.Add(new XAttribute("stroke", pen.Colour.ToHex()), new XAttribute("stroke-width", Number(pen.WidthMm)));
            if (pen.IsRound)
            {
                element.Add(new XAttribute("stroke-linecap", "round"), new XAttribute("stroke-linejoin", "round"));
            }

            if (pen.DashesMm.Count > 0)
            {
                element.Add(new XAttribute("stroke-dasharray", string.Join(' ', pen.DashesMm.Select(Number))));
            }
        }

        return element;
    }

    private static string Data(IReadOnlyList<Contour> contours)
    {
        var data = new StringBuilder();
        foreach (var contour in contours)
        {
            for (var i = 0; i < contour.Points.Count; i++)
            {
                data.Append(i == 0 ? 'M' : 'L').Append(Number(contour.Points[i].XMm)).Append(' ').Append(Number(contour.Points[i].YMm));
            }

            if (contour.IsClosed)
            {
                data.Append('Z');
            }
        }

        return data.ToString();
    }

    // A tenth of a micrometre: far below any printer, and short to read.
    private static string Number(double value) => (Math.Round(value, 4) + 0.0).ToString("0.####", CultureInfo.InvariantCulture);
}
