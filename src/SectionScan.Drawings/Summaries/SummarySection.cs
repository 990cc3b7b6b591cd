namespace SectionScan.Drawings.Summaries;

/// <summary>A section of a summary page.</summary>
/// <param name="Heading">Its heading; unique within the page.</param>
/// <param name="Blocks">Its content in order.</param>
public sealed record SummarySection(string Heading, IReadOnlyList<SummaryBlock> Blocks);
