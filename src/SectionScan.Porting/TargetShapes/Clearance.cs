using SectionScan.Metrology.Frames;

namespace SectionScan.Porting.TargetShapes;

/// <summary>A distance that a target keeps from something.</summary>
/// <param name="Name">What it is: "oil drain".</param>
/// <param name="DistanceMm">How far a place of the section is from it, mm; negative within it. Must not fall by more than the way gone.</param>
/// <param name="LeastMm">The least distance of the target from it, mm.</param>
/// <param name="Note">The person's own words; may be empty.</param>
public sealed record Clearance(string Name, Func<SectionPoint, double> DistanceMm, double LeastMm, string Note);
