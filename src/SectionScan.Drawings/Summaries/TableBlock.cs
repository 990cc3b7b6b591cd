namespace SectionScan.Drawings.Summaries;

/// <summary>A table whose first column names the rows. A later column in which every cell begins with a digit or a
/// sign is set to the right.</summary>
/// <param name="Caption">What the table shows.</param>
/// <param name="Headers">The columns' names.</param>
/// <param name="Rows">The rows, each with as many cells as there are headers.</param>
public sealed record TableBlock(string Caption, IReadOnlyList<string> Headers, IReadOnlyList<IReadOnlyList<string>> Rows) : SummaryBlock;
