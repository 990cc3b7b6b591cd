namespace SectionScan.Drawings.Summaries;

/// <summary>A paragraph of plain text.</summary>
/// <param name="Text">The text.</param>
public sealed record ParagraphBlock(string Text) : SummaryBlock;
