using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Imaging.Digitising;

/// <summary>A section as digitised from a photo.</summary>
/// <param name="Station">From its tag, or null.</param>
/// <param name="IsOpening">True for an opening in metal, false for a slice of a mould.</param>
/// <param name="ThicknessMm">Height of the face above the target's plane, mm.</param>
/// <param name="Outline">The outline in its own frame (origin at the centroid, y to the roof), mm; at the port's size where the
/// mould's shrinkage was told.</param>
/// <param name="Placement">Where it lay.</param>
/// <param name="PlacedOutline">The face as it lies in the target frame, mm, y down.</param>
/// <param name="DisplayedPixels">The outline in the photo, px as displayed, for drawing over it.</param>
/// <param name="ErrorSources">Independent causes of error.</param>
/// <param name="Cautions">What the person should know, each with a stable code.</param>
public sealed record DigitisedSection(
    int? Station,
    bool IsOpening,
    double ThicknessMm,
    Outline Outline,
    SectionPlacement Placement,
    IReadOnlyList<TargetPoint> PlacedOutline,
    IReadOnlyList<PixelPoint> DisplayedPixels,
    IReadOnlyList<OutlineErrorSource> ErrorSources,
    IReadOnlyList<Problem> Cautions)
{
    /// <summary>The same in plain sentences.</summary>
    public IReadOnlyList<string> Warnings => [.. Cautions.Select(caution => caution.InWords())];
}
