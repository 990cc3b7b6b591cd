using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Summaries;

/// <summary>Drawings set into the page as SVG, side by side where there is room.</summary>
/// <param name="Drawings">The drawings; each one's title is read out by screen readers.</param>
/// <param name="Caption">What they show.</param>
public sealed record DrawingBlock(IReadOnlyList<Page> Drawings, string Caption) : SummaryBlock;
