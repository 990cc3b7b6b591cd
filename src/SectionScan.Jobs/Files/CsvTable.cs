using System.Globalization;
using System.Text;

namespace SectionScan.Jobs.Files;

/// <summary>A table with commas between the cells and one line a row (RFC 4180, lines ending in LF); numbers with a point, whatever the
/// country.</summary>
/// <param name="headings">The first line.</param>
public sealed class CsvTable(params string[] headings)
{
    private readonly StringBuilder text = new(string.Join(',', headings) + "\n");

    /// <summary>Adds a row.</summary>
    /// <param name="cells">Texts, numbers (written with all that they hold), true or false as yes or no; null is an empty cell.</param>
    public void Add(params object?[] cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        if (cells.Length != headings.Length)
        {
            throw new ArgumentException($"{headings.Length} cells are wanted, not {cells.Length}.", nameof(cells));
        }

        text.Append(string.Join(',', cells.Select(Cell))).Append('\n');
    }

    /// <summary>The table.</summary>
    public override string ToString() => text.ToString();

    private static string Cell(object? cell) => cell switch
    {
        null or double.NaN => string.Empty,
        bool isSo => isSo ? "yes" : "no",
        double number => Math.Round(number, 6).ToString(CultureInfo.InvariantCulture),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => Quoted(cell.ToString()!),
    };

    private static string Quoted(string words) =>
        words.AsSpan().ContainsAny(",\"\r\n") ? $"\"{words.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : words;
}
