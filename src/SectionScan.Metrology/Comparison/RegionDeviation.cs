namespace SectionScan.Metrology.Comparison;

/// <summary>The deviation within one part of the outline.</summary>
/// <param name="Region">The part.</param>
/// <param name="MeanMm">The mean deviation, mm.</param>
/// <param name="LowestMm">The lowest deviation, mm: where most metal is left.</param>
/// <param name="HighestMm">The highest deviation, mm: where most metal is gone.</param>
/// <param name="LengthMm">The length of reference outline in the part, mm.</param>
public sealed record RegionDeviation(OutlineRegion Region, double MeanMm, double LowestMm, double HighestMm, double LengthMm)
{
    /// <summary>The metal beyond the reference that is gone, mm³ for each millimetre of port: the deviation over the sector's length, which
    /// leaves out the wall's curvature (d/2R of it: 1.3 % for 0.4 mm at R 15).</summary>
    public double GoneMm3PerMm { get; init; }

    /// <summary>The metal within the reference that is left, mm³ for each millimetre of port.</summary>
    public double LeftMm3PerMm { get; init; }
}
