namespace SectionScan.Drawings.Summaries;

/// <summary>A page to read in a browser: what was measured, with drawings, tables and cautions.</summary>
/// <param name="Title">The page's title.</param>
/// <param name="Introduction">The first paragraph.</param>
/// <param name="Sections">The sections in order.</param>
public sealed record SummaryPage(string Title, string Introduction, IReadOnlyList<SummarySection> Sections)
{
    /// <summary>What stands on the cover: names and values such as head, port, date.</summary>
    public IReadOnlyList<(string Name, string Value)> Facts { get; init; } = [];

    /// <summary>The last line: program, version, date; empty for none.</summary>
    public string Footer { get; init; } = string.Empty;
}
