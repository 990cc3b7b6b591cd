using SectionScan.Metrology.Outlines;

namespace SectionScan.Porting.TargetShapes;

/// <summary>A target shape as it came out.</summary>
/// <param name="Outline">The target's outline in the own section's frame, mm.</param>
/// <param name="Limits">Every limit with what it held back, the own metal last.</param>
/// <param name="ReferenceScale">The reference's factor of size that was used.</param>
/// <param name="LargestFairingMm">The farthest that fairing moved the wall from what was asked for, where no limit held it, mm.</param>
/// <param name="Missed">What the target's measure came to where it could not be what was wanted; null when it could.</param>
public sealed record TargetShape(
    Outline Outline, IReadOnlyList<TargetLimit> Limits, double ReferenceScale, double LargestFairingMm, double? Missed);
