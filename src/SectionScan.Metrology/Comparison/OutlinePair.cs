using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Comparison;

/// <summary>An outline of a pattern that is moved as one, and the outline on which it is to come to lie.</summary>
/// <param name="Fixed">The outline that stays, mm.</param>
/// <param name="Moved">The outline of the pattern, mm, in the pattern's own frame.</param>
public sealed record OutlinePair(Outline Fixed, Outline Moved);
