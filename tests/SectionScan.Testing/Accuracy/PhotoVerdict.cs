using SectionScan.Imaging.Digitising;
using SectionScan.Metrology.Results;
using SectionScan.Testing.Truth;

namespace SectionScan.Testing.Accuracy;

/// <summary>What became of one photo, judged by its truth.</summary>
/// <param name="Name">The photo's name.</param>
/// <param name="Found">The sections that were found, in the truth's order.</param>
/// <param name="Missed">The sections that were not.</param>
/// <param name="Invented">Sections where none lies.</param>
/// <param name="Problem">Why the photo as a whole was refused, or null.</param>
/// <param name="Photo">All that the photo gave, or null.</param>
public sealed record PhotoVerdict(
    string Name,
    IReadOnlyList<FoundSection> Found,
    IReadOnlyList<SectionTruth> Missed,
    int Invented,
    Problem? Problem,
    DigitisedPhoto? Photo)
{
    /// <summary>True when each section was found once, with the right station, and nothing else.</summary>
    public bool IsComplete => Missed.Count == 0 && Invented == 0 && Found.All(f => f.HasRightStation);
}
