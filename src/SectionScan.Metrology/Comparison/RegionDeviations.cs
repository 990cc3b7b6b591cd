using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Comparison;

/// <summary>Sums deviations up sector by sector.</summary>
public static class RegionDeviations
{
    /// <summary>The deviations of each sector that holds a place, in the order of <see cref="OutlineRegion"/>.</summary>
    /// <param name="reference">The reference.</param>
    /// <param name="samples">The deviations at even steps round it.</param>
    public static IReadOnlyList<RegionDeviation> Of(Outline reference, IReadOnlyList<DeviationSample> samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        var spacing = PolygonFacts.Of(reference).PerimeterMm / samples.Count;
        return [.. samples.GroupBy(sample => sample.Region).OrderBy(group => group.Key).Select(group => new RegionDeviation(
            group.Key,
            group.Average(sample => sample.DeviationMm),
            group.Min(sample => sample.DeviationMm),
            group.Max(sample => sample.DeviationMm),
            group.Count() * spacing)
        {
            GoneMm3PerMm = group.Sum(sample => Math.Max(0, sample.DeviationMm)) * spacing,
            LeftMm3PerMm = group.Sum(sample => Math.Max(0, -sample.DeviationMm)) * spacing,
        })];
    }
}
