using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Porting.Lofts;

/// <summary>A section at its place along the centreline, square to it.</summary>
/// <param name="Station">Its number.</param>
/// <param name="Outline">The outline, mm; its centroid lies on the centreline.</param>
/// <param name="DistanceMm">Distance along the centreline, mm.</param>
/// <param name="Turn">How far the centreline has turned toward the floor since the first station.</param>
public sealed record LoftStation(int Station, Outline Outline, double DistanceMm, Angle Turn);
