using SectionScan.Imaging.Digitising;
using SectionScan.Testing.Truth;

namespace SectionScan.Testing.Accuracy;

/// <summary>A section that was found where one lies.</summary>
/// <param name="Truth">What lies there.</param>
/// <param name="Section">What was measured.</param>
/// <param name="Score">The errors.</param>
public sealed record FoundSection(SectionTruth Truth, DigitisedSection Section, SectionScore Score)
{
    /// <summary>True when the station is the one on the tag, and none is claimed where no tag lies.</summary>
    public bool HasRightStation => Section.Station == (Truth.TagUp is null ? null : Truth.Station);
}
