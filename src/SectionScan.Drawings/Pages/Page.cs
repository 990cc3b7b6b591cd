namespace SectionScan.Drawings.Pages;

/// <summary>A drawn page at true size, before it becomes SVG or PDF.</summary>
/// <param name="WidthMm">Width, mm.</param>
/// <param name="HeightMm">Height, mm.</param>
/// <param name="Title">What it shows, for document titles and screen readers.</param>
/// <param name="Items">What is drawn, from back to front.</param>
public sealed record Page(double WidthMm, double HeightMm, string Title, IReadOnlyList<PageItem> Items);
