using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Solids;

namespace SectionScan.Porting.Lofts;

/// <summary>The section of a lofted solid at one distance.</summary>
/// <param name="DistanceMm">Distance along the centreline, mm.</param>
/// <param name="TurnRad">How far the centreline has turned toward the floor, rad.</param>
/// <param name="Section">The section's places counter-clockwise from the right as seen with the flow, from its centroid, mm.</param>
/// <param name="Places">The same places in space, mm.</param>
/// <param name="Centre">The centreline's place, mm.</param>
public sealed record LoftRing(double DistanceMm, double TurnRad, IReadOnlyList<SectionPoint> Section, IReadOnlyList<SpacePoint> Places, SpacePoint Centre);
