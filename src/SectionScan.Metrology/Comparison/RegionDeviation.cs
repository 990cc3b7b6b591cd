namespace SectionScan.Metrology.Comparison;

/// <summary>The deviation within one part of the outline.</summary>
/// <param name="Region">The part.</param>
/// <param name="MeanMm">The mean deviation, mm.</param>
/// <param name="LowestMm">The lowest deviation, mm: where most metal is left.</param>
/// <param name="HighestMm">The highest deviation, mm: where most metal is gone.</param>
/// <param name="LengthMm">The length of reference outline in the part, mm.</param>
public sealed record RegionDeviation(OutlineRegion Region, double MeanMm, double LowestMm, double HighestMm, double LengthMm);
