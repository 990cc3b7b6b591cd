using SectionScan.Metrology.Frames;

namespace SectionScan.Testing.Rendering;

/// <summary>A slice of a mould lying on the sheet, face up.</summary>
/// <param name="Station">The station that its tag names, or null without a tag.</param>
/// <param name="Outline">The face: N ≥ 3 corners, simple, counter-clockwise, section frame, mm.</param>
/// <param name="Placement">Where the section frame lies on the target.</param>
/// <param name="ThicknessMm">The height of the face above the paper.</param>
/// <param name="Material">What it is cast from.</param>
public sealed record SceneSlice(int? Station, SectionPoint[] Outline, SectionPlacement Placement, double ThicknessMm, SliceMaterial Material)
{
    /// <summary>How far the wall moves outward, all round, for each mm below the face; negative: the base is smaller.</summary>
    public double DraftTangent { get; init; }

    /// <summary>How far the whole cross-section shifts to the right on the paper for each mm below the face (a skew saw cut).</summary>
    public double LeanX { get; init; }

    /// <summary>How far the whole cross-section shifts down on the paper for each mm below the face.</summary>
    public double LeanY { get; init; }

    /// <summary>Air bubbles in the face.</summary>
    public IReadOnlyList<SceneBubble> Bubbles { get; init; } = [];

    /// <summary>Burrs on the edge.</summary>
    public IReadOnlyList<SceneBurr> Burrs { get; init; } = [];

    /// <summary>The contrast of the saw marks on the face, as a share of its reflectance.</summary>
    public double SawMarks { get; init; } = 0.06;

    /// <summary>How much the face reflects like a mirror; 0 is dull.</summary>
    public double Gloss { get; init; }
}
