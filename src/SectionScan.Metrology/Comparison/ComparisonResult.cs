using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Comparison;

/// <summary>How a measured outline differs from a reference.</summary>
/// <param name="Reference">The reference outline.</param>
/// <param name="Measured">The measured outline as it was laid on the reference, and how.</param>
/// <param name="Samples">The deviation at even steps along the reference, counter-clockwise.</param>
/// <param name="AreaDifferenceMm2">The measured area less the reference's, mm²: positive when the measured port is larger.</param>
/// <param name="IntersectionOverUnion">The common area over the area of both together, 0 to 1.</param>
/// <param name="HausdorffMm">The Hausdorff distance of the edges, mm.</param>
/// <param name="Hausdorff95Mm">The distance within which 95 % of either outline lies from the other, mm.</param>
/// <param name="DiscreteFrechetMm">The discrete Fréchet distance of the outlines walked round, mm.</param>
/// <param name="Procrustes">The likeness of the shapes, whatever their place, turn and size.</param>
public sealed record ComparisonResult(
    Outline Reference,
    AlignedOutline Measured,
    IReadOnlyList<DeviationSample> Samples,
    double AreaDifferenceMm2,
    double IntersectionOverUnion,
    double HausdorffMm,
    double Hausdorff95Mm,
    double DiscreteFrechetMm,
    ProcrustesFit Procrustes)
{
    /// <summary>The mean signed deviation around the reference, mm.</summary>
    public double MeanDeviationMm => Samples.Average(sample => sample.DeviationMm);

    /// <summary>The root mean square deviation around the reference, mm.</summary>
    public double RmsDeviationMm => Math.Sqrt(Samples.Average(sample => sample.DeviationMm * sample.DeviationMm));

    /// <summary>Where the measured wall lies farthest outside the reference, or least inside.</summary>
    public DeviationSample Highest => Samples.MaxBy(sample => sample.DeviationMm)!;

    /// <summary>Where the measured wall lies farthest inside the reference, or least outside.</summary>
    public DeviationSample Lowest => Samples.MinBy(sample => sample.DeviationMm)!;

    /// <summary>The deviation part by part, in the order of <see cref="OutlineRegion"/>; parts that hold no place are left out.</summary>
    public IReadOnlyList<RegionDeviation> Regions => RegionDeviations.Of(Reference, Samples);
}
