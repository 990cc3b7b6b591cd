using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Comparison;

/// <summary>Where several walls lie at one place.</summary>
/// <param name="Place">The place on the middle outline, mm.</param>
/// <param name="Direction">Its direction from the middle outline's centroid.</param>
/// <param name="Region">Its sector.</param>
/// <param name="DeviationsMm">How far each wall lies outside the middle outline, mm, in the order of the sections.</param>
public sealed record SpreadPlace(SectionPoint Place, Angle Direction, OutlineRegion Region, IReadOnlyList<double> DeviationsMm)
{
    /// <summary>From the innermost to the outermost wall, mm.</summary>
    public double RangeMm => DeviationsMm.Max() - DeviationsMm.Min();

    /// <summary>Which section has the outermost wall.</summary>
    public int Outermost => IndexOf(DeviationsMm.Max());

    /// <summary>Which section has the innermost wall.</summary>
    public int Innermost => IndexOf(DeviationsMm.Min());

    private int IndexOf(double value) => DeviationsMm.ToList().IndexOf(value);
}
