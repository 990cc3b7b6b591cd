namespace SectionScan.Testing.Truth;

/// <summary>A measured section against the truth; errors are measured minus true, in the section's true axes.</summary>
/// <param name="AreaErrorPercent">Of the true area.</param>
/// <param name="PerimeterErrorPercent">Of the true perimeter.</param>
/// <param name="WidthErrorMm">Along the section's true x.</param>
/// <param name="HeightErrorMm">Along the section's true y.</param>
/// <param name="Centred">The outline's deviation with both centroids at one place.</param>
/// <param name="AsPlaced">The outline's deviation where both lie on the target, without any alignment; null when no placed outline was given.</param>
/// <param name="CentroidErrorMm">Between the two centroids on the target; null when no placed outline was given.</param>
public sealed record SectionScore(
    double AreaErrorPercent,
    double PerimeterErrorPercent,
    double WidthErrorMm,
    double HeightErrorMm,
    OutlineDeviation Centred,
    OutlineDeviation? AsPlaced,
    double? CentroidErrorMm);
