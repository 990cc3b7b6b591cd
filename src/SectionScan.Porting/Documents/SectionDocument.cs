using SectionScan.Metrology.Capture;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Corrections;
using SectionScan.Porting.Sections;
using SectionScan.Porting.TargetShapes;

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

    /// <summary>Corrections by hand, the first one first; written only when there are any.</summary>
    public IReadOnlyList<HandCorrection> Corrections { get; init; } = [];

    /// <summary>What a person marked in the section; nothing for most.</summary>
    public SectionMarks Marks { get; init; } = SectionMarks.None;

    /// <summary>How a target shape was settled on; null for whatever was measured.</summary>
    public TargetShapeFacts? TargetShape { get; init; }

    /// <summary>The document as it will be read back: coordinates at whole 0.0001 mm, the turn at whole 0.000001°. Whoever makes a
    /// document rounds it before measuring, so that the document and its measures agree for ever.</summary>
    /// <param name="where">What the document belongs to, for the message of a refusal.</param>
    /// <returns>The rounded document; rounding it again changes nothing. A problem of <see cref="Outline.From"/> when the outline is
    /// so small that it does not survive the rounding.</returns>
    public Result<SectionDocument> Rounded(string where = "section")
    {
        var points = Section.Outline.Points.ToArray().Select(p => new SectionPoint(RoundedMm(p.XMm), RoundedMm(p.YMm)));
        return Outline.From(points, where).Then<SectionDocument>(outline => this with
        {
            Section = Section with { Outline = outline },
            PlacedOutline = [.. PlacedOutline.Select(Rounded)],
            Marks = Marks.Mapped(p => new(RoundedMm(p.XMm), RoundedMm(p.YMm))),
            Placement = Placement is null
                ? null
                : new(Rounded(Placement.Origin), Angle.FromDegrees(RoundedDeg(Placement.Up.Degrees))),
        });
    }

    // Adding zero turns a negative zero, which would be written as -0, into a plain one.
    internal static double RoundedMm(double value) => Math.Round(value, 4) + 0.0;

    internal static double RoundedDeg(double value) => Math.Round(value, 6) + 0.0;

    private static TargetPoint Rounded(TargetPoint point) => new(RoundedMm(point.XMm), RoundedMm(point.YMm));
}
