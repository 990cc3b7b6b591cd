using SectionScan.Drawings.Sections;

namespace SectionScan.Drawings.Comparisons;

/// <summary>What stands beside the outlines on a comparison's drawing.</summary>
/// <param name="Title">The head line.</param>
/// <param name="ReferenceName">What the reference is: "exemplar, station 4".</param>
/// <param name="MeasuredName">What is compared with it: "finished, station 4".</param>
public sealed record ComparisonCaption(string Title, string ReferenceName, string MeasuredName)
{
    /// <summary>What a positive deviation means.</summary>
    public string OutsideMeaning { get; init; } = "metal already gone";

    /// <summary>What a negative deviation means.</summary>
    public string InsideMeaning { get; init; } = "metal left";

    /// <summary>Short lines below the head line, such as mean and RMS.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>How large the outlines are drawn at the most, mm; they are enlarged by whole steps up to it.</summary>
    public double LargestFigureMm { get; init; } = 120;

    /// <summary>The unit shown.</summary>
    public LengthUnit Unit { get; init; }
}
