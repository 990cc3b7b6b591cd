using System.Globalization;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Gauges;

/// <summary>The table of a gauge study: which photo shows which plug, and who took it.</summary>
public static class StudyTable
{
    /// <summary>The longest table that is read.</summary>
    public const int MaximumBytes = 1_000_000;

    private const int MostRows = 2000;
    private const double MostMm = 200;
    private const double MostThicknessMm = 60;

    // A calliper's ±0.02 mm, rectangular (common practice, no source).
    private const double UntoldUncertaintyMm = 0.02 / 1.7320508;
    private const string NobodyNamed = "-";

    private static readonly char[] Separators = [';', '\t', ','];
    private static readonly string[] Required = ["photo", "plug", "shape", "width_mm", "thickness_mm"];
    private static readonly string[] Known = [.. Required, "height_mm", "u_mm", "person", "camera", "sheet"];

    /// <summary>Reads a table: a head line that names the columns in any order, then one photo a line. Commas, semicolons or tabs part the
    /// columns; with the latter two numbers may have a decimal comma. Lines that begin with # are remarks.</summary>
    /// <param name="text">The table.</param>
    /// <param name="path">Its file: photos are named as seen from its folder, and lie in it.</param>
    public static Result<IReadOnlyList<StudyRow>> Read(string text, string path)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = text.TrimStart('\ufeff').Split('\n').Select((line, i) => (Number: i + 1, Text: line.Trim()))
            .Where(line => line.Text.Length > 0 && line.Text[0] != '#').ToArray();
        if (lines.Length == 0)
        {
            return StudyTableProblems.NoHead(path, Required);
        }

        var separator = Separators.First(c => c == ',' || lines[0].Text.Contains(c, StringComparison.Ordinal));
        var columns = lines[0].Text.ToLowerInvariant().Split(separator).Select(c => c.Trim().Trim('"')).ToArray();
        if (Required.Except(columns).Any() || columns.Distinct().Count() != columns.Length)
        {
            return StudyTableProblems.NoHead(path, Required);
        }

        if (columns.Except(Known).FirstOrDefault() is { } unknown)
        {
            return StudyTableProblems.UnknownColumn(path, unknown, Known);
        }

        if (lines.Length - 1 > MostRows)
        {
            return StudyTableProblems.TooLong(path, MostRows);
        }

        var rows = new List<StudyRow>();
        foreach (var line in lines.Skip(1))
        {
            var cells = line.Text.Split(separator).Select(c => c.Trim().Trim('"')).ToArray();
            if (cells.Length != columns.Length)
            {
                return StudyTableProblems.BadLine(path, line.Number, $"it has {cells.Length} columns, the head line {columns.Length}");
            }

            var fields = columns.Zip(cells).ToDictionary(pair => pair.First, pair => pair.Second);
            if (!Row(fields, separator, path, line.Number).TryGet(out var row, out var problem))
            {
                return problem;
            }

            if (rows.Exists(r => r.Photo == row.Photo))
            {
                return StudyTableProblems.BadLine(path, line.Number, $"{fields["photo"]} is named twice; a photo counted again is no repeat");
            }

            if (rows.Exists(r => r.Plug.Name == row.Plug.Name && (r.Plug != row.Plug)))
            {
                return StudyTableProblems.BadLine(path, line.Number, $"plug {row.Plug.Name} has another shape or size than above");
            }

            rows.Add(row);
        }

        return rows.Count == 0 ? StudyTableProblems.NoHead(path, Required) : rows;
    }

    private static Result<StudyRow> Row(Dictionary<string, string> fields, char separator, string path, int number)
    {
        if (fields["plug"].Length == 0 || fields["photo"].Length == 0)
        {
            return StudyTableProblems.BadLine(path, number, "photo and plug must be named");
        }

        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        var photo = Path.GetFullPath(Path.Combine(folder, fields["photo"]));
        if (Path.GetRelativePath(folder, photo) is var seen && (Path.IsPathRooted(seen) || seen.Split(Path.DirectorySeparatorChar)[0] == ".."))
        {
            return StudyTableProblems.BadLine(path, number, $"{fields["photo"]} lies outside the table's folder");
        }

        if (!Enum.TryParse<PlugShape>(fields["shape"], ignoreCase: true, out var shape) || !Enum.IsDefined(shape) || int.TryParse(fields["shape"], out _))
        {
            return StudyTableProblems.BadLine(path, number, $"shape {fields["shape"]} is not circle, stadium, square or rectangle");
        }

        var hasTwoSides = shape is PlugShape.Stadium or PlugShape.Rectangle;
        var width = Number(fields, "width_mm", separator, null);
        var height = hasTwoSides ? Number(fields, "height_mm", separator, null) : Number(fields, "height_mm", separator, width);
        var thickness = Number(fields, "thickness_mm", separator, null);
        var uncertainty = Number(fields, "u_mm", separator, UntoldUncertaintyMm);
        if (!(width is > 0 and <= MostMm && height is > 0 and <= MostMm))
        {
            return StudyTableProblems.BadLine(
                path, number, hasTwoSides ? $"width_mm and height_mm must lie above 0 and up to {MostMm}" : $"width_mm must lie above 0 and up to {MostMm}");
        }

        if (!hasTwoSides && height != width)
        {
            return StudyTableProblems.BadLine(path, number, $"a {fields["shape"]} has one size: leave height_mm empty");
        }

        if (!(thickness is >= 0 and <= MostThicknessMm && uncertainty is >= 0 and <= 1))
        {
            return StudyTableProblems.BadLine(path, number, $"thickness_mm must lie from 0 to {MostThicknessMm}, u_mm from 0 to 1");
        }

        var plug = new Plug(fields["plug"], shape, Math.Max(width.Value, height.Value), Math.Min(width.Value, height.Value), uncertainty.Value);
        return new StudyRow(photo, plug, thickness.Value, Named(fields, "person"), Named(fields, "camera"), Named(fields, "sheet"));
    }

    private static string Named(Dictionary<string, string> fields, string column) =>
        fields.GetValueOrDefault(column) is { Length: > 0 } name ? name : NobodyNamed;

    private static double? Number(Dictionary<string, string> fields, string column, char separator, double? untold)
    {
        if (fields.GetValueOrDefault(column) is not { Length: > 0 } cell)
        {
            return untold;
        }

        var text = separator == ',' ? cell : cell.Replace(',', '.');
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
    }
}
