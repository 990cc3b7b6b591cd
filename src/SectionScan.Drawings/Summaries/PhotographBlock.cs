namespace SectionScan.Drawings.Summaries;

/// <summary>A picture within the page itself, so that the page stays one file.</summary>
/// <param name="Jpeg">A JPEG file's bytes.</param>
/// <param name="Description">What is to be seen, for those who do not see it.</param>
/// <param name="Caption">The line below the picture.</param>
public sealed record PhotographBlock(ReadOnlyMemory<byte> Jpeg, string Description, string Caption) : SummaryBlock;
