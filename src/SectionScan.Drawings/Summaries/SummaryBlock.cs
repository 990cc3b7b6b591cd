namespace SectionScan.Drawings.Summaries;

/// <summary>One piece of a section of a summary page.</summary>
public abstract record SummaryBlock;
