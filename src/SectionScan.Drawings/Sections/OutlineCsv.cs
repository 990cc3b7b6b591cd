using System.Globalization;
using System.Text;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Drawings.Sections;

/// <summary>An outline as a table of its corners for spreadsheets and drawing programs: the head line <c>x_mm,y_mm</c>, then one corner
/// a line to a millionth of its unit, section frame, counter-clockwise, first corner not repeated.</summary>
public static class OutlineCsv
{
    /// <summary>The most corners that are read.</summary>
    public const int MaxPoints = 100_000;

    private const char ByteOrderMark = '\ufeff';

    /// <summary>Writes an outline, UTF-8, lines ended by \n. The stream stays open.</summary>
    /// <param name="outline">The outline.</param>
    /// <param name="stream">Where it goes.</param>
    /// <param name="isInch">True: in inches, with the head line <c>x_in,y_in</c>.</param>
    public static void Write(Outline outline, Stream stream, bool isInch = false)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(stream);
        var scale = isInch ? 1 / Inch.Mm : 1;
        var text = new StringBuilder(isInch ? "x_in,y_in\n" : "x_mm,y_mm\n");
        foreach (var point in outline.Points)
        {
            text.Append(CultureInfo.InvariantCulture, $"{Rounded(point.XMm * scale):0.######},{Rounded(point.YMm * scale):0.######}\n");
        }

        stream.Write(Encoding.UTF8.GetBytes(text.ToString()));
    }

    /// <summary>Reads an outline. The head line names the unit, <c>x_mm,y_mm</c> or <c>x_in,y_in</c>. Semicolons or tabs may part the
    /// columns; numbers may then have a decimal comma, as spreadsheets of many countries write them.</summary>
    /// <param name="reader">The text.</param>
    /// <param name="where">The file's name, for the message of a refusal.</param>
    /// <returns>The outline, or <c>csv-no-head</c>, <c>csv-bad-line</c>, <c>csv-too-long</c> or a problem of the outline itself.</returns>
    public static Result<Outline> Read(TextReader reader, string where)
    {
        ArgumentNullException.ThrowIfNull(reader);
        var head = (reader.ReadLine() ?? string.Empty).TrimStart(ByteOrderMark).Trim();
        var separator = head.Contains(';', StringComparison.Ordinal) ? ';' : head.Contains('\t', StringComparison.Ordinal) ? '\t' : ',';
        double factor;
        switch (head.ToLowerInvariant().Replace(" ", string.Empty, StringComparison.Ordinal).Replace(separator, ','))
        {
            case "x_mm,y_mm":
                factor = 1;
                break;
            case "x_in,y_in":
                factor = Inch.Mm;
                break;
            default:
                return OutlineCsvProblems.NoHead(where);
        }

        var points = new List<SectionPoint>();
        var lineNumber = 1;
        while (reader.ReadLine() is { } line)
        {
            lineNumber++;
            if (string.IsNullOrWhiteSpace(line))
            {
                continue;
            }

            if (Parse(line, separator) is not { } point)
            {
                return OutlineCsvProblems.BadLine(where, lineNumber);
            }

            if (points.Count == MaxPoints)
            {
                return OutlineCsvProblems.TooLong(where);
            }

            points.Add(new(point.X * factor, point.Y * factor));
        }

        return Outline.From(points, where);
    }

    private static (double X, double Y)? Parse(string line, char separator)
    {
        var cells = line.Split(separator);
        return cells.Length == 2 && Number(cells[0], separator) is { } x && Number(cells[1], separator) is { } y ? (x, y) : null;
    }

    private static double? Number(string cell, char separator)
    {
        var text = separator == ',' ? cell : cell.Replace(',', '.');
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : null;
    }

    // Adding zero turns −0 into 0.
    private static double Rounded(double value) => Math.Round(value, 6) + 0.0;
}
