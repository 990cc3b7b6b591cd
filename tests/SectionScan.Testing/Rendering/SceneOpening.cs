using SectionScan.Metrology.Frames;

namespace SectionScan.Testing.Rendering;

/// <summary>A port opening in the sawn face of a casting.</summary>
/// <param name="Outline">Its edge in the plane of the face, counter-clockwise, section frame, mm.</param>
/// <param name="Placement">Where the section frame lies on the target.</param>
/// <param name="DepthMm">How deep the floor lies.</param>
/// <param name="DraftTangent">How far the wall moves outward for each mm of depth; negative: it narrows and its wall is seen.</param>
public sealed record SceneOpening(SectionPoint[] Outline, SectionPlacement Placement, double DepthMm, double DraftTangent);
