namespace SectionScan.Metrology.Comparison;

/// <summary>What a best fit may change, and how distances count in it.</summary>
/// <param name="Freedom">What it may change.</param>
/// <param name="Loss">How distances count.</param>
/// <param name="HasEvenOffset">Fit an even offset along with the place: a port that is still smaller all round is then not taken for one
/// that is off on every side. Not together with a free scale, which does the same.</param>
public sealed record FitRule(AlignmentFreedom Freedom, FitLoss Loss = FitLoss.LeastSquares, bool HasEvenOffset = false);
