using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Imaging.Digitising;

/// <summary>How much smaller a mould has become than the port that it was cast in; negative for one that grew, as plaster does.</summary>
/// <param name="Share">Linear: the loss of length over the port's length.</param>
/// <param name="ToldStandardUncertainty">Standard uncertainty of <paramref name="Share"/>, or null when nobody told it.</param>
public sealed record MouldShrinkage(double Share, double? ToldStandardUncertainty = null)
{
    // Nobody told: the true value lies within half of the stated one, rectangular (common practice, no source: makers state one figure for
    // a rubber that shrinks more with heat, mixing ratio and weeks).
    private const double UntoldHalfWidth = 0.5;

    /// <summary>Standard uncertainty of <see cref="Share"/>.</summary>
    public double StandardUncertainty => ToldStandardUncertainty ?? UntoldHalfWidth * Math.Abs(Share) / Math.Sqrt(3);

    /// <summary>By what the mould's lengths are multiplied to give the port's: L = ℓ / (1 − s).</summary>
    public double Enlargement => 1 / (1 - Share);

    /// <summary>What is not known of it, as a stretch of the port's outline: dL/L = u(s) / (1 − s).</summary>
    internal OutlineErrorSource ErrorSource => new(
        "mould shrinkage", [LinearEffect.Scale(StandardUncertainty * Enlargement)], IsAssumed: ToldStandardUncertainty is null);
}
