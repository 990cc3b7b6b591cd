using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Drawings.Outlines;

/// <summary>Reads the lines of an SVG drawing: path, polygon, polyline, line, rect, circle and ellipse, with their transforms. Its
/// unit is that of the drawing's own width and height, the inch having 96 px (CSS Values and Units 3, section 6.2). Text, pictures,
/// symbols, and what is only referred to are passed over.</summary>
public static class SvgOutlines
{
    private const double ToleranceMm = 0.0002;
    private const double PxPerInch = 96;
    private const double PointsPerInch = 72;
    private const double PicasPerInch = 6;
    private const int DeepestGroup = 200;

    private static readonly string[] PassedOver = ["defs", "symbol", "clipPath", "mask", "marker", "pattern", "metadata", "text", "style", "title", "desc"];

    /// <summary>Reads a drawing. The lines' unit is the drawing's user unit.</summary>
    /// <param name="text">The file's text. It is not trusted: nothing that it refers to is opened.</param>
    /// <param name="where">The file, for the message of a refusal.</param>
    /// <param name="mmPerUnit">How many mm a user unit is, when a person says so; decides how finely curves are cut.</param>
    /// <returns>The lines; or <c>drawing-broken</c>.</returns>
    public static Result<DrawnFile> Read(string text, string where, double? mmPerUnit = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        XElement root;
        try
        {
            var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null };
            using var source = new StringReader(text);
            using var reader = XmlReader.Create(source, settings);
            root = XDocument.Load(reader, LoadOptions.SetLineInfo).Root!;
        }
        catch (XmlException e)
        {
            return OutlineFileProblems.BrokenLine(where, e.LineNumber, "the text is not XML: " + e.Message.Split('.')[0] + ".");
        }

        if (root.Name.LocalName != "svg")
        {
            return OutlineFileProblems.Broken(where, $"The file is not an SVG drawing: its root is <{root.Name.LocalName}>.");
        }

        var stated = MmPerUnit(root);
        var lines = new List<DrawnLine>();
        var problem = Walk(root, new(1, 0, 0, -1, 0, 0), string.Empty, ToleranceMm / (mmPerUnit ?? stated ?? 1), lines, where, 0);
        return problem is null ? new DrawnFile(lines, stated) : problem;
    }

    private static Problem? Walk(XElement parent, Affine place, string layer, double tolerance, List<DrawnLine> lines, string where, int depth)
    {
        if (depth > DeepestGroup)
        {
            return OutlineFileProblems.Broken(where, "Groups are nested too deeply.");
        }

        foreach (var element in parent.Elements().Where(each => !PassedOver.Contains(each.Name.LocalName)))
        {
            if (SvgTransform.Read((string?)element.Attribute("transform")) is not { } own)
            {
                return Broken(element, where, "its transform cannot be read");
            }

            var at = place.After(own);
            var name = LayerOf(element) ?? layer;
            var chords = new Chords(tolerance / Math.Max(at.Enlargement, 1e-9));
            if (Shape(element, name, chords) is not { } shapes)
            {
                return Broken(element, where, "its coordinates cannot be read");
            }

            lines.AddRange(shapes.Select(line => line with { Points = [.. line.Points.Select(at.Apply)] }));
            if (element.HasElements && Walk(element, at, name, tolerance, lines, where, depth + 1) is { } problem)
            {
                return problem;
            }
        }

        return null;
    }

    private static IReadOnlyList<DrawnLine>? Shape(XElement element, string layer, Chords chords)
    {
        double Of(string name, double usual = 0) => Length(element, name) is { } number ? number : usual;
        switch (element.Name.LocalName)
        {
            case "path":
                return new SvgPath(layer, (string?)element.Attribute("d") ?? string.Empty, chords).Read();
            case "polygon" or "polyline":
                return Corners((string?)element.Attribute("points") ?? string.Empty) is { } corners
                    ? [new(layer, corners, element.Name.LocalName == "polygon")]
                    : null;
            case "line":
                return [new(layer, [new(Of("x1"), Of("y1")), new(Of("x2"), Of("y2"))], false)];
            case "rect":
                var (x, y, w, h) = (Of("x"), Of("y"), Of("width"), Of("height"));
                var rx = Math.Min(Of("rx", Of("ry")), w / 2);
                var ry = Math.Min(Of("ry", Of("rx")), h / 2);
                return Rounded(layer, (x, y, w, h), rx, ry, chords);
            case "circle" or "ellipse":
                var points = new List<SectionPoint>();
                chords.AddArc(points, new(Of("cx"), Of("cy")), new(Of("rx", Of("r")), 0), new(0, Of("ry", Of("r"))), 0, 2 * Math.PI);
                return [new(layer, points, true)];
            default:
                return [];
        }
    }

    private static IReadOnlyList<DrawnLine>? Rounded(string layer, (double X, double Y, double W, double H) box, double rx, double ry, Chords chords)
    {
        var (x, y, w, h) = box;
        FormattableString data = rx > 0 && ry > 0
            ? (FormattableString)$"M{x + rx} {y}H{x + w - rx}A{rx} {ry} 0 0 1 {x + w} {y + ry}V{y + h - ry}A{rx} {ry} 0 0 1 {x + w - rx} {y + h}H{x + rx}A{rx} {ry} 0 0 1 {x} {y + h - ry}V{y + ry}A{rx} {ry} 0 0 1 {x + rx} {y}Z"
            : $"M{x} {y}H{x + w}V{y + h}H{x}Z";
        return new SvgPath(layer, data.ToString(CultureInfo.InvariantCulture), chords).Read();
    }

    private static List<SectionPoint>? Corners(string text)
    {
        var numbers = new SvgNumbers(text);
        var corners = new List<SectionPoint>();
        while (!numbers.IsAtEnd)
        {
            if (numbers.Number() is not { } x || numbers.Number() is not { } y)
            {
                return null;
            }

            corners.Add(new(x, y));
        }

        return corners;
    }

    private static double? Length(XElement element, string name) =>
        (string?)element.Attribute(name) is { } text ? new SvgNumbers(text).Number() : null;

    // What a person sees in the list of layers: the label, else the class that our own drawings use, else a group's id. The id of a
    // single line is a number that the drawing program gave it: lines that meet must not be kept apart by it.
    private static string? LayerOf(XElement element)
    {
        var isGroup = element.Name.LocalName is "g" or "svg" or "a" or "switch";
        return (string?)element.Attributes().FirstOrDefault(each => each.Name.LocalName == "label")
            ?? (string?)element.Attribute("class")
            ?? (isGroup ? (string?)element.Attribute("id") : null);
    }

    private static double? MmPerUnit(XElement root)
    {
        if (Millimetres((string?)root.Attribute("width")) is not { } widthMm || Millimetres((string?)root.Attribute("height")) is not { } heightMm)
        {
            return null;
        }

        if ((string?)root.Attribute("viewBox") is not { } box)
        {
            return Inch.Mm / PxPerInch;
        }

        // The whole box is shown within width and height without stretching it: preserveAspectRatio's usual "meet".
        return Corners(box) is [_, { XMm: > 0, YMm: > 0 } size] ? Math.Min(widthMm / size.XMm, heightMm / size.YMm) : null;
    }

    private static double? Millimetres(string? text)
    {
        if (text?.Trim() is not { Length: > 0 } trimmed)
        {
            return null;
        }

        var digits = trimmed.TrimEnd([.. "abcdefghijklmnopqrstuvwxyz%".ToCharArray()]);
        return double.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && number > 0
            ? trimmed[digits.Length..] switch
            {
                "mm" => number,
                "cm" => number * 10,
                "in" => number * Inch.Mm,
                "pt" => number * Inch.Mm / PointsPerInch,
                "pc" => number * Inch.Mm / PicasPerInch,

                // A drawing in px says how it looks on a screen and nothing of its true size.
                _ => null,
            }
            : null;
    }

    private static Problem Broken(XElement element, string where, string what) => OutlineFileProblems.BrokenLine(
        where, ((IXmlLineInfo)element).LineNumber, $"<{element.Name.LocalName}>: {what}.");
}
