using SectionScan.Jobs.Outlines;

namespace SectionScan.Cli.Options;

/// <summary>The kinds of file that outlines are written as: <c>dxf,svg,csv</c>.</summary>
internal static class OutlineKindsOption
{
    /// <summary>All of them.</summary>
    public const string All = "dxf,svg,csv";

    /// <summary>What the option says of itself.</summary>
    public const string Description = "The kinds of file, with commas between them: " + All;

    /// <summary>Reads kinds that have no <see cref="Fault"/>.</summary>
    public static IReadOnlyList<string> Read(string text) =>
        [.. text.ToLowerInvariant().Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Distinct()];

    /// <summary>What is wrong with the text; null when nothing is.</summary>
    public static string? Fault(string text)
    {
        var kinds = Read(text);
        return kinds.Count == 0 || kinds.Any(kind => !OutlineExport.KnownKinds.Contains(kind))
            ? $"--as {text} is not known: give one or more of {string.Join(", ", OutlineExport.KnownKinds)} with commas between them."
            : null;
    }
}
