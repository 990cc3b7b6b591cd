using System.Globalization;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Ports;

namespace SectionScan.Archive.Entries;

/// <summary>Which port of a head: kind, cylinder and, where a cylinder has several of a kind, a mark such as "left".</summary>
/// <param name="Kind">Intake or exhaust.</param>
/// <param name="Cylinder">The cylinder's number, 1 to 99.</param>
/// <param name="Mark">What tells it from the others of its kind at this cylinder; empty when it is the only one.</param>
public sealed record PortName(PortKind Kind, int Cylinder, string Mark = "")
{
    /// <summary>The highest cylinder number.</summary>
    public const int MostCylinders = 99;

    /// <summary>Reads "intake 1" or "exhaust 2 left"; large and small letters alike.</summary>
    /// <returns>The name, or <c>port-name-unusable</c>.</returns>
    public static Result<PortName> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split(' ', 3, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (parts.Length < 2
            || !(KindOf(parts[0]) is { } kind)
            || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var cylinder)
            || cylinder is < 1 or > MostCylinders)
        {
            return EntryProblems.PortNameUnusable(text);
        }

        return new PortName(kind, cylinder, parts.Length == 3 ? parts[2] : "");
    }

    /// <summary>"intake 1" or "exhaust 2 left".</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Word(Kind)} {Cylinder}{(Mark.Length == 0 ? "" : " ")}{Mark}");

    internal static string Word(PortKind kind) => kind == PortKind.Intake ? "intake" : "exhaust";

    internal static PortKind? KindOf(string word) =>
        word.Equals("intake", StringComparison.OrdinalIgnoreCase) ? PortKind.Intake
        : word.Equals("exhaust", StringComparison.OrdinalIgnoreCase) ? PortKind.Exhaust
        : null;
}
