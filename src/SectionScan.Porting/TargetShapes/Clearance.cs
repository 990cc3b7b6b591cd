using SectionScan.Porting.Walls;

namespace SectionScan.Porting.TargetShapes;

/// <summary>A distance that a target keeps from something.</summary>
/// <param name="Name">What it is: "oil drain".</param>
/// <param name="Shape">Where it lies.</param>
/// <param name="LeastMm">The least distance of the target from it, mm.</param>
/// <param name="Note">The person's own words; may be empty.</param>
public sealed record Clearance(string Name, KeepOutShape Shape, double LeastMm, string Note);
