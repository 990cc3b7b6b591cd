using System.Globalization;
using SectionScan.Archive.Search;

namespace SectionScan.Cli.Options;

/// <summary>A range of one number: <c>area=900..1100</c>, <c>valve diameter=1.25..1.35 in</c>, <c>station=3..</c>.</summary>
internal static class RangeOption
{
    /// <summary>Reads ranges that have no <see cref="Fault"/>.</summary>
    /// <param name="ranges">As they were given.</param>
    /// <param name="units">The unit of the section's own lengths and areas where a range names none; a field without a unit is
    /// compared as the bare number that was kept.</param>
    public static IReadOnlyList<NumberRange> Read(IEnumerable<string> ranges, UnitOption units) => [.. ranges.Select(text =>
    {
        var range = TryRead(text) ?? throw new ArgumentException($"{text} was not checked before it was read.", nameof(ranges));
        return range.Unit is not null ? range : range with
        {
            Unit = range.Name.ToLowerInvariant() switch
            {
                "area" => units.AreaSymbol,
                "width" or "height" => units.LengthSymbol,
                _ => null,
            },
        };
    })];

    /// <summary>What is wrong with the first of the ranges that is none; null when all are well.</summary>
    public static string? Fault(IEnumerable<string> ranges) => ranges.FirstOrDefault(range => TryRead(range) is null) is { } bad
        ? $"--range {bad} is not a range: give, for example, --range area=900..1100, --range \"valve diameter=1.25..1.35 in\" or --range station=3.."
        : null;

    private static NumberRange? TryRead(string text)
    {
        var parts = text.Split('=', 2);
        var ends = parts.Length == 2 ? parts[1].Split("..", 2) : [];
        if (ends.Length != 2 || parts[0].Trim().Length == 0)
        {
            return null;
        }

        // The unit stands after the last number: behind the upper end, or behind the dots when there is none.
        var upper = ends[1].Trim();
        var at = 0;
        while (at < upper.Length && (char.IsAsciiDigit(upper[at]) || upper[at] is '.' or '-' or '+' || IsExponent(upper, at)))
        {
            at++;
        }

        var (high, unit) = (upper[..at], upper[at..].Trim());
        return IsEnd(ends[0].Trim(), out var least) && IsEnd(high, out var greatest)
            && (least ?? greatest) is not null && !(least > greatest)
            ? new(parts[0].Trim(), least, greatest, unit.Length == 0 ? null : unit)
            : null;
    }

    private static bool IsExponent(string text, int at) =>
        text[at] is 'e' or 'E' && at > 0 && char.IsAsciiDigit(text[at - 1]) && at + 1 < text.Length && (char.IsAsciiDigit(text[at + 1]) || text[at + 1] is '-' or '+');

    private static bool IsEnd(string text, out double? end)
    {
        end = null;
        if (text.Length == 0)
        {
            return true;
        }

        if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value))
        {
            return false;
        }

        end = value;
        return true;
    }
}
