namespace SectionScan.Metrology.Cameras;

/// <summary>One photo of a target taken to learn the lens.</summary>
/// <param name="Name">The photo's name, for reports.</param>
/// <param name="Points">The target's points found in it.</param>
/// <param name="Start">A rough pose.</param>
public sealed record LensView(string Name, IReadOnlyList<SightedPoint> Points, Pose Start);
