using SectionScan.Metrology.Capture;
using SectionScan.Metrology.Frames;
using SectionScan.Porting.Sections;

namespace SectionScan.Porting.Documents;

/// <summary>A section with its whole provenance, as kept in a file or in the library.</summary>
/// <param name="Section">The section.</param>
/// <param name="Placement">Where it lay on the target; null for a section that did not come from a photo.</param>
/// <param name="PlacedOutline">The outline in the target frame, mm, y down; empty without a photo.</param>
/// <param name="Photo">The photo, or null.</param>
/// <param name="Target">The scale target's fit, or null.</param>
/// <param name="Camera">The camera, or null.</param>
/// <param name="Settings">The settings it was made with, name to value, in the command line's words.</param>
/// <param name="Program">Name and version of the program that made it.</param>
public sealed record SectionDocument(
    Section Section,
    SectionPlacement? Placement,
    IReadOnlyList<TargetPoint> PlacedOutline,
    PhotoFacts? Photo,
    TargetFit? Target,
    CameraFacts? Camera,
    IReadOnlyDictionary<string, string> Settings,
    string Program)
{
    /// <summary>The schema's name, stored inside each document.</summary>
    public const string SchemaName = "sectionscan/section/1";
}
