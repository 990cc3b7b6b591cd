namespace SectionScan.Drawings.Summaries;

/// <summary>A picture file beside the page.</summary>
/// <param name="RelativePath">The file's path from the page's folder, parted by /, not leaving that folder.</param>
/// <param name="Description">What is to be seen, for those who do not see it.</param>
/// <param name="Caption">The line below the picture.</param>
public sealed record PictureBlock(string RelativePath, string Description, string Caption) : SummaryBlock;
