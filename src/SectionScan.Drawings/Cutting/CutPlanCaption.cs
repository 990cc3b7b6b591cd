using SectionScan.Drawings.Sections;

namespace SectionScan.Drawings.Cutting;

/// <summary>What stands beside the outlines on the page of a cut.</summary>
/// <param name="Title">The head line: "Cut plan, intake 2, station 3".</param>
/// <param name="PresentName">The present section's name.</param>
/// <param name="TargetName">The target's name.</param>
public sealed record CutPlanCaption(string Title, string PresentName, string TargetName)
{
    /// <summary>The order of work at this station, in plain words.</summary>
    public IReadOnlyList<string> Steps { get; init; } = [];

    /// <summary>The unit shown.</summary>
    public LengthUnit Unit { get; init; }
}
