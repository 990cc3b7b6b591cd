namespace SectionScan.Drawings.Summaries;

/// <summary>Links to files beside the page.</summary>
/// <param name="Files">Each file's path from the page's folder (parted by /, not leaving it), and what it holds.</param>
public sealed record FilesBlock(IReadOnlyList<(string RelativePath, string Description)> Files) : SummaryBlock;
