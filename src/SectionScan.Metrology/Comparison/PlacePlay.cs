using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Comparison;

/// <summary>A place of a moved pattern that must stay near a fixed place: the middle of a bolt's hole near the middle of its stud.</summary>
/// <param name="Fixed">The fixed place, mm.</param>
/// <param name="Moved">The place of the pattern, mm, in the pattern's own frame.</param>
/// <param name="PlayMm">How far apart the two may be, mm: half of the hole's diameter less the stud's. Zero makes a pivot.</param>
public sealed record PlacePlay(SectionPoint Fixed, SectionPoint Moved, double PlayMm);
