using SectionScan.Imaging.Digitising;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Digitising;

/// <summary>What became of one photo: its sections, or the problem that stood in the way of all of them.</summary>
/// <param name="Path">The photo as it was named.</param>
/// <param name="Digitised">What it gave, or null.</param>
/// <param name="Documents">A document for each section.</param>
/// <param name="Problem">Why it gave nothing, or null.</param>
/// <param name="Files">Full paths of the files written.</param>
public sealed record PhotoOutcome(
    string Path,
    DigitisedPhoto? Digitised,
    IReadOnlyList<DigitisedDocument> Documents,
    Problem? Problem,
    IReadOnlyList<string> Files);
