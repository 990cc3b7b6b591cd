namespace SectionScan.Testing.Truth;

/// <summary>How far a measured outline lies from the true one, taken at 2000 even steps along the true one, mm.</summary>
/// <param name="MeanSignedMm">The mean, outward positive: a bias in size.</param>
/// <param name="MedianMm">The median of the distance.</param>
/// <param name="Percentile95Mm">95 % of the true length lies within it.</param>
/// <param name="MaximumMm">The worst place.</param>
/// <param name="ShareWithin005Mm">The share of the true length that lies within 0.05 mm.</param>
public sealed record OutlineDeviation(
    double MeanSignedMm, double MedianMm, double Percentile95Mm, double MaximumMm, double ShareWithin005Mm);
