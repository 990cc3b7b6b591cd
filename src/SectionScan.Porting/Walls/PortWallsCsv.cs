using System.Globalization;
using System.Text;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Walls;

/// <summary>Walls and keep-outs as a table that any spreadsheet writes: one line for a circle or a reading, one line for each corner
/// of a line or an outline.</summary>
/// <remarks>
/// Columns, in any order: <c>kind</c> (circle, line, outline, reading), <c>name</c>, <c>x_mm</c>, <c>y_mm</c> and <c>u_mm</c> (standard
/// uncertainty) are needed; <c>station</c> (empty: every station), <c>radius_mm</c> (circles), <c>wall_mm</c> (readings), <c>limit_mm</c>
/// (empty: 2.5 mm), <c>source</c> (drawing or measured; empty: drawing) and <c>note</c> may be left out. Lines of one kind, name and
/// station that follow each other make one line or outline; its other columns are read from its first line. Lengths are in mm, or in
/// inches in columns that end in <c>_in</c>. Cells may be quoted (RFC 4180).
/// </remarks>
public static class PortWallsCsv
{
    /// <summary>The columns in the order in which they are written.</summary>
    public const string Head = "kind,station,name,x_mm,y_mm,radius_mm,wall_mm,u_mm,limit_mm,source,note";

    /// <summary>The most lines that are read.</summary>
    public const int MostLines = 20_000;

    /// <summary>The longest text that is read.</summary>
    public const int MaximumBytes = 4_000_000;

    private const double FarthestMm = 10_000;
    private static readonly string[] Words = ["kind", "station", "name", "source", "note"];
    private static readonly string[] Lengths = ["x", "y", "radius", "wall", "u", "limit"];
    private static readonly string[] Needed = ["kind", "name", "x", "y", "u"];

    /// <summary>Reads a table.</summary>
    /// <param name="text">The text.</param>
    /// <param name="where">The file, for the message of a refusal.</param>
    /// <returns>The walls, or one of <see cref="PortWallsProblems"/>, or a problem of an outline.</returns>
    public static Result<PortWalls> Read(string text, string where)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = text.TrimStart('\ufeff').Split('\n');
        if (lines.Length > MostLines)
        {
            return PortWallsProblems.TooLong(where);
        }

        var head = lines[0].Trim().ToLowerInvariant();
        var separator = head.Contains(';', StringComparison.Ordinal) ? ';' : head.Contains('\t', StringComparison.Ordinal) ? '\t' : ',';
        if (!Columns(Cells(head, separator), where).TryGet(out var columns, out var problem))
        {
            return problem;
        }

        var rows = new List<Row>();
        for (var i = 1; i < lines.Length; i++)
        {
            if (string.IsNullOrWhiteSpace(lines[i]))
            {
                continue;
            }

            if (!ReadRow(Cells(lines[i].TrimEnd('\r'), separator), columns, separator != ',', i + 1, where).TryGet(out var row, out problem))
            {
                return problem;
            }

            rows.Add(row);
        }

        return Assemble(rows, where);
    }

    /// <summary>Writes a table that reads back to the same walls, lengths to 0.0001 mm.</summary>
    public static string Write(PortWalls walls)
    {
        ArgumentNullException.ThrowIfNull(walls);
        var text = new StringBuilder(Head + "\n");
        foreach (var (station, keepOut) in walls.KeepOuts)
        {
            var isFirst = true;
            foreach (var point in Corners(keepOut.Shape))
            {
                var radius = (keepOut.Shape as KeepOutCircle)?.RadiusMm;
                var source = keepOut.Source == KeepOutSource.Drawing ? "drawing" : "measured";
                Append(text, keepOut.Shape.Kind, station, keepOut.Name, point, radius, null, keepOut.PlaceStandardUncertaintyMm, keepOut.LimitMm, source, isFirst ? keepOut.Note : string.Empty);
                isFirst = false;
            }
        }

        foreach (var (station, reading) in walls.Readings)
        {
            Append(text, "reading", station, reading.Name, reading.Place, null, reading.WallMm.Value, reading.WallMm.StandardUncertainty, reading.LimitMm, string.Empty, reading.Note);
        }

        return text.ToString();
    }

    private static IReadOnlyList<SectionPoint> Corners(KeepOutShape shape) => shape switch
    {
        KeepOutCircle circle => [circle.Centre],
        KeepOutLine line => line.Points,
        KeepOutOutline outline => outline.Outline.Points.ToArray(),
        _ => throw new ArgumentException($"No table for a {shape.GetType().Name}.", nameof(shape)),
    };

    private static void Append(
        StringBuilder text, string kind, int? station, string name, SectionPoint place, double? radius, double? wall, double u, double limit, string source, string note) =>
        text.Append(CultureInfo.InvariantCulture, $"{kind},{station},{Quoted(name)},{Number(place.XMm)},{Number(place.YMm)},{Number(radius)},{Number(wall)},{Number(u)},{Number(limit)},{source},{Quoted(note)}\n");

    private static string Number(double? lengthMm) =>
        lengthMm is { } length ? (Math.Round(length, 4) + 0.0).ToString("0.####", CultureInfo.InvariantCulture) : string.Empty;

    private static string Quoted(string cell)
    {
        var plain = cell.ReplaceLineEndings(" ");
        return plain.AsSpan().IndexOfAny(",;\t\"") >= 0 ? $"\"{plain.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : plain;
    }

    private static Result<Dictionary<string, (int At, double Factor)>> Columns(List<string> cells, string where)
    {
        var columns = new Dictionary<string, (int At, double Factor)>(StringComparer.Ordinal);
        for (var at = 0; at < cells.Count; at++)
        {
            var cell = cells[at].Trim();
            var isInch = cell.EndsWith("_in", StringComparison.Ordinal);
            var name = isInch || cell.EndsWith("_mm", StringComparison.Ordinal) ? cell[..^3] : cell;
            var isKnown = name == cell ? Words.Contains(name) : Lengths.Contains(name);
            if (!isKnown || !columns.TryAdd(name, (at, isInch ? Inch.Mm : 1)))
            {
                return PortWallsProblems.Head(where, isKnown ? $"The column {name} is there twice." : $"The column \"{cell}\" is not known.");
            }
        }

        return Needed.FirstOrDefault(name => !columns.ContainsKey(name)) is { } missing
            ? PortWallsProblems.Head(where, $"The column {(Lengths.Contains(missing) ? missing + "_mm" : missing)} is missing.")
            : columns;
    }

    private static Result<Row> ReadRow(
        List<string> cells, Dictionary<string, (int At, double Factor)> columns, bool mayHaveDecimalCommas, int line, string where)
    {
        string Word(string name) => columns.TryGetValue(name, out var column) && column.At < cells.Count ? cells[column.At].Trim() : string.Empty;
        var lengths = new Dictionary<string, double?>(StringComparer.Ordinal);
        foreach (var name in Lengths)
        {
            var cell = mayHaveDecimalCommas ? Word(name).Replace(',', '.') : Word(name);
            var isNumber = double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var value);
            if (cell.Length > 0 && !(isNumber && Math.Abs(value) <= FarthestMm))
            {
                return PortWallsProblems.Line(where, line, $"\"{cell}\" is no length for the column {name}");
            }

            lengths[name] = cell.Length > 0 ? value * columns[name].Factor : null;
        }

        var kind = Word("kind").ToLowerInvariant();
        int? station = null;
        if (Word("station") is { Length: > 0 } numbered)
        {
            if (!int.TryParse(numbered, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            {
                return PortWallsProblems.Line(where, line, $"\"{numbered}\" is no station number");
            }

            station = number;
        }

        var fault = kind is not ("circle" or "line" or "outline" or "reading") ? $"\"{kind}\" is not a kind: give circle, line, outline or reading"
            : lengths["x"] is null || lengths["y"] is null ? "its place is missing (x and y)"
            : lengths["u"] is not > 0 ? "it gives no standard uncertainty u above zero; a place known to ±0.5 mm has u 0.3 mm, a caliper reading good to ±0.1 mm has u 0.06 mm"
            : kind == "circle" && lengths["radius"] is not >= 0 ? "a circle needs its radius"
            : kind == "reading" && lengths["wall"] is not > 0 ? "a reading needs the wall that was read"
            : lengths["limit"] is <= 0 ? "a limit is more than zero"
            : Word("source") is not ("" or "drawing" or "measured") ? $"\"{Word("source")}\" is not a source: give drawing or measured"
            : null;
        return fault is not null
            ? PortWallsProblems.Line(where, line, fault)
            : new Row(
                line, kind, station, Word("name"), new(lengths["x"]!.Value, lengths["y"]!.Value), lengths["radius"] ?? 0, lengths["wall"] ?? 0,
                lengths["u"]!.Value, lengths["limit"] ?? KeepOut.UsualLimitMm, Word("source") == "measured" ? KeepOutSource.Measured : KeepOutSource.Drawing, Word("note"));
    }

    private static Result<PortWalls> Assemble(List<Row> rows, string where)
    {
        var keepOuts = new List<(int?, KeepOut)>();
        var readings = new List<(int?, WallReading)>();
        for (var i = 0; i < rows.Count;)
        {
            var row = rows[i];
            var corners = row.Kind is "line" or "outline" ? rows.Skip(i).TakeWhile(row.Continues).Select(each => each.Place).ToList() : [row.Place];
            i += corners.Count;
            if (row.Kind == "reading")
            {
                readings.Add((row.Station, new(row.Name, row.Place, new Estimate(row.WallMm, row.UMm), row.LimitMm, row.Note)));
                continue;
            }

            if (!Shape(row, corners, where).TryGet(out var shape, out var problem))
            {
                return problem;
            }

            keepOuts.Add((row.Station, new(row.Name.Length > 0 ? row.Name : row.Kind, shape, row.UMm, row.LimitMm, row.Source, row.Note)));
        }

        return new PortWalls(keepOuts, readings);
    }

    private static Result<KeepOutShape> Shape(Row row, List<SectionPoint> corners, string where)
    {
        switch (row.Kind)
        {
            case "circle":
                return new KeepOutCircle(row.Place, row.RadiusMm);
            case "line":
                return corners.Distinct().Count() < 2
                    ? PortWallsProblems.Line(where, row.Line, $"the line \"{row.Name}\" has fewer than two different places")
                    : new KeepOutLine(corners);
            default:
                return Outline.From(corners, $"{where}, line {row.Line}").Then<KeepOutShape>(outline => new KeepOutOutline(outline));
        }
    }

    /// <summary>The cells of one line; a cell in quotation marks may hold the separator and doubled quotation marks.</summary>
    private static List<string> Cells(string line, char separator)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var isQuoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            var c = line[i];
            if (c == '"' && isQuoted && i + 1 < line.Length && line[i + 1] == '"')
            {
                cell.Append(line[++i]);
            }
            else if (c == '"' && (isQuoted || cell.Length == 0))
            {
                isQuoted = !isQuoted;
            }
            else if (c == separator && !isQuoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add(cell.ToString());
        return cells;
    }

    private sealed record Row(
        int Line, string Kind, int? Station, string Name, SectionPoint Place, double RadiusMm, double WallMm, double UMm, double LimitMm, KeepOutSource Source, string Note)
    {
        public bool Continues(Row later) => later.Kind == Kind && later.Name == Name && later.Station == Station;
    }
}
