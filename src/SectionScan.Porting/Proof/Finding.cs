namespace SectionScan.Porting.Proof;

/// <summary>A stretch of the outline where the proof failed or stayed open.</summary>
/// <param name="Verdict">Does not conform, or undecided.</param>
/// <param name="Worst">Its worst place.</param>
/// <param name="FromDeg">Direction from the target's centroid where it begins, degrees from x counter-clockwise.</param>
/// <param name="ToDeg">Where it ends, counter-clockwise from there.</param>
/// <param name="LengthMm">How long it is along the target, mm.</param>
public sealed record Finding(Verdict Verdict, ProvedPlace Worst, double FromDeg, double ToDeg, double LengthMm)
{
    /// <summary>True where too much metal is gone, which nothing brings back; false where metal is left.</summary>
    public bool IsTooFar => Worst.DeviationMm > 0;
}
