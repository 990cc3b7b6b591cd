using SectionScan.Metrology.Frames;

namespace SectionScan.Testing.Rendering;

/// <summary>A thin flake that the saw left hanging over the edge, in the plane of the face: a capsule from one place to another. The
/// truth polygon does not know it.</summary>
/// <param name="From">Where it is rooted, section frame.</param>
/// <param name="To">Where it ends, section frame.</param>
/// <param name="HalfWidthMm">Half its width.</param>
public readonly record struct SceneBurr(SectionPoint From, SectionPoint To, double HalfWidthMm);
