using SectionScan.Metrology.Frames;

namespace SectionScan.Testing.Rendering;

/// <summary>An air bubble cut open by the saw: a sphere centred in the plane of the face. Near the edge it notches the silhouette;
/// the truth polygon does not know it.</summary>
/// <param name="At">The centre, section frame.</param>
/// <param name="RadiusMm">The radius.</param>
public readonly record struct SceneBubble(SectionPoint At, double RadiusMm);
