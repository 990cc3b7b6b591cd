using System.Globalization;
using SectionScan.Archive.Entries;

namespace SectionScan.Cli.Options;

/// <summary>A number with its name and unit: <c>valve diameter=33 mm</c>.</summary>
internal static class FieldOption
{
    /// <summary>Reads a field that has no <see cref="Fault"/>.</summary>
    public static NumericField Read(string text) =>
        TryRead(text) ?? throw new ArgumentException($"{text} was not checked before it was read.", nameof(text));

    /// <summary>What is wrong with the first of the fields that is none; null when all are well.</summary>
    public static string? Fault(string option, IEnumerable<string> fields) => fields.FirstOrDefault(field => TryRead(field) is null) is { } bad
        ? $"{option} {bad} is not a name, an equals sign and a number: give, for example, {option} \"valve diameter=33 mm\"."
        : null;

    private static NumericField? TryRead(string text)
    {
        var at = text.IndexOf('=', StringComparison.Ordinal);
        var parts = text[(at + 1)..].Trim().Split(' ', 2);
        return at > 0 && double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value)
            ? new(text[..at].Trim(), value, parts.Length > 1 ? parts[1].Trim() : string.Empty)
            : null;
    }
}
