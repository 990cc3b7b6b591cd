using SectionScan.Metrology.Frames;

namespace SectionScan.Testing.Rendering;

/// <summary>Something that lies on the target and covers part of it.</summary>
/// <param name="Outline">Its outline, target frame.</param>
/// <param name="HeightMm">Its height.</param>
/// <param name="Colour">Its reflectance.</param>
public sealed record SceneObstacle(TargetPoint[] Outline, double HeightMm, LinearColour Colour);
