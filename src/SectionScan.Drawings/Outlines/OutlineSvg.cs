using System.Globalization;
using System.Text;
using System.Xml.Linq;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Outlines;

/// <summary>Writes a bare outline as an SVG drawing at true size, for drawing programs and cutters: one closed path on the layer
/// <c>outline</c> and nothing else.</summary>
public static class OutlineSvg
{
    /// <summary>The layer of the outline.</summary>
    public const string Layer = "outline";

    private const double MarginMm = 5;
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>Writes an outline, UTF-8, lines ended by \n. The stream stays open.</summary>
    /// <param name="outline">The outline, y up.</param>
    /// <param name="title">What it is.</param>
    /// <param name="isInch">True: the drawing's unit is the inch.</param>
    /// <param name="stream">Where it goes.</param>
    public static void Write(Outline outline, string title, bool isInch, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(stream);
        var (scale, unit) = isInch ? (1 / 25.4, "in") : (1.0, "mm");
        var points = outline.Points.ToArray();
        var (left, right) = ((points.Min(p => p.XMm) - MarginMm) * scale, (points.Max(p => p.XMm) + MarginMm) * scale);
        var (bottom, top) = ((points.Min(p => p.YMm) - MarginMm) * scale, (points.Max(p => p.YMm) + MarginMm) * scale);
        var data = new StringBuilder();
        foreach (var point in points)
        {
            data.Append(data.Length == 0 ? 'M' : 'L').Append(Number(point.XMm * scale)).Append(' ').Append(Number(-point.YMm * scale));
        }

        var root = new XElement(
            Svg + "svg",
            new XAttribute("version", "1.1"),
            new XAttribute("width", Number(right - left) + unit),
            new XAttribute("height", Number(top - bottom) + unit),
            new XAttribute("viewBox", $"{Number(left)} {Number(-top)} {Number(right - left)} {Number(top - bottom)}"),
            new XElement(Svg + "title", title),
            new XElement(
                Svg + "path",
                new XAttribute("class", Layer),
                new XAttribute("d", data.Append('Z').ToString()),
                new XAttribute("fill", "none"),
                new XAttribute("stroke", "#000000"),
                new XAttribute("stroke-width", Number(0.1 * scale))));
        stream.Write(Encoding.UTF8.GetBytes("<?xml version=\"1.0\" encoding=\"utf-8\"?>\n" + root.ToString().ReplaceLineEndings("\n") + "\n"));
    }

    // A millionth of a unit: what a section document keeps survives the way there and back.
    private static string Number(double value) => (Math.Round(value, 6) + 0.0).ToString("0.######", CultureInfo.InvariantCulture);
}
