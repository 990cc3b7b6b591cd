using System.Globalization;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Ports;

/// <summary>The small table that a person writes: one line for each station.</summary>
/// <remarks>A head line names the columns in any order: <c>station</c> and <c>distance_mm</c> (or <c>distance_in</c>) must be there;
/// <c>tilt_deg</c>, <c>turn_deg</c> and <c>u_mm</c> (standard uncertainty of the distance) may. Parted by commas or semicolons; decimal
/// points; empty lines and lines that begin with # are passed over.</remarks>
public static class StationTableCsv
{
    /// <summary>The longest text that is read.</summary>
    public const int MaximumBytes = 100_000;


    private static readonly string[] Known = ["station", "distance_mm", "distance_in", "tilt_deg", "turn_deg", "u_mm"];

    /// <summary>Reads a table.</summary>
    /// <param name="text">The text.</param>
    /// <param name="where">The file, for messages.</param>
    /// <returns>The table, or one of <see cref="StationProblems"/>.</returns>
    public static Result<StationTable> Read(string text, string where)
    {
        ArgumentNullException.ThrowIfNull(text);
        string[]? columns = null;
        var rows = new List<StationPosition>();
        var lines = text.TrimStart('\uFEFF').Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i].Trim();
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            var cells = line.Split(line.Contains(';', StringComparison.Ordinal) ? ';' : ',', StringSplitOptions.TrimEntries);
            if (columns is null)
            {
                columns = [.. cells.Select(cell => cell.ToLowerInvariant())];
                if (HeadProblem(columns, where) is { } problem)
                {
                    return problem;
                }
            }
            else if (Row(columns, cells, i + 1, where).TryGet(out var row, out var problem))
            {
                rows.Add(row);
            }
            else
            {
                return problem;
            }
        }

        return StationTable.From(rows, where);
    }

    private static Problem? HeadProblem(string[] columns, string where) =>
        columns.FirstOrDefault(column => !Known.Contains(column)) is { } unknown ? StationProblems.ColumnUnknown(where, unknown, Known)
        : columns.Length != columns.Distinct().Count() || !columns.Contains("station")
            || columns.Contains("distance_mm") == columns.Contains("distance_in") ? StationProblems.ColumnMissing(where)
        : null;

    private static Result<StationPosition> Row(string[] columns, string[] cells, int line, string where)
    {
        if (cells.Length != columns.Length)
        {
            return StationProblems.LineUnusable(where, line, $"it has {cells.Length} cells, the head line {columns.Length}");
        }

        var row = new StationPosition(0, 0);
        for (var i = 0; i < cells.Length; i++)
        {
            if (cells[i].Length == 0 && columns[i] is "tilt_deg" or "turn_deg" or "u_mm")
            {
                continue;
            }

            var isNumber = double.TryParse(cells[i], NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value);
            if (!isNumber || (columns[i] == "station" && (value != Math.Floor(value) || Math.Abs(value) > 9999)))
            {
                var wanted = columns[i] == "station" ? "a whole number" : "a number with a decimal point";
                return StationProblems.LineUnusable(where, line, $"\"{cells[i]}\" under {columns[i]} is not {wanted}");
            }

            row = columns[i] switch
            {
                "station" => row with { Station = (int)value },
                "distance_mm" => row with { DistanceMm = value },
                "distance_in" => row with { DistanceMm = value * Inch.Mm },
                "tilt_deg" => row with { Tilt = Angle.FromDegrees(value) },
                "turn_deg" => row with { Turn = Angle.FromDegrees(value) },
                _ => row with { DistanceStandardUncertaintyMm = value },
            };
        }

        return row;
    }
}
