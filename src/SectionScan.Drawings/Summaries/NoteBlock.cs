namespace SectionScan.Drawings.Summaries;

/// <summary>A remark set off from the text.</summary>
/// <param name="Text">The text.</param>
/// <param name="IsCaution">True for what can do harm or spoil work; false for what is good to know.</param>
public sealed record NoteBlock(string Text, bool IsCaution = false) : SummaryBlock;
