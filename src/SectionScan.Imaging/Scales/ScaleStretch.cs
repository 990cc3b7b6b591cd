namespace SectionScan.Imaging.Scales;

/// <summary>How well the length of the scale itself is known.</summary>
/// <param name="Name">The cause, as it stands in budgets.</param>
/// <param name="Across">Relative standard uncertainty along the target's x.</param>
/// <param name="Up">Relative standard uncertainty along its y.</param>
/// <param name="IsShared">True when one error stretches both directions alike, false when each has its own.</param>
/// <param name="IsAssumed">True when it is a default and nobody measured it.</param>
internal sealed record ScaleStretch(string Name, double Across, double Up, bool IsShared, bool IsAssumed);
