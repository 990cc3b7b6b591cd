namespace SectionScan.Metrology.Comparison;

/// <summary>Where a fit came to rest.</summary>
/// <param name="Transform">How the measured outline is moved.</param>
/// <param name="EvenOffsetMm">The even offset fitted with it, mm, outward positive.</param>
/// <param name="Loss">Its loss: the mean square distance for least squares.</param>
internal sealed record FitOutcome(SimilarityTransform Transform, double EvenOffsetMm, double Loss);
