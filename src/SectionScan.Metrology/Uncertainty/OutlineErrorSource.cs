namespace SectionScan.Metrology.Uncertainty;

/// <summary>One independent cause of error of a whole outline, at one standard uncertainty: how the outline would move if this
/// cause alone were off by its u. Kept with the section, so that the uncertainty of any measure can be worked out at any time.</summary>
/// <param name="Name">The cause in words, as it stands in budgets: "print scale", "slice thickness".</param>
/// <param name="Effects">How the outline moves, one or more effects that are independent of one another.</param>
/// <param name="IsAssumed">True when u is an assumption with a default rather than derived from this photo.</param>
public sealed record OutlineErrorSource(string Name, IReadOnlyList<OutlineEffect> Effects, bool IsAssumed = false);
