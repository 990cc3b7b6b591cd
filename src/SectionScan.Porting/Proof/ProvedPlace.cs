using SectionScan.Metrology.Comparison;

namespace SectionScan.Porting.Proof;

/// <summary>One place of the target with what was found there.</summary>
/// <param name="Sample">The place and its own deviation.</param>
/// <param name="DeviationMm">The deviation averaged over the stated length, mm: positive where too much metal is gone.</param>
/// <param name="SharedMm">u of the part that neighbours share, mm.</param>
/// <param name="RandomMm">u of the part that averages out, mm.</param>
/// <param name="Tolerance">The bounds there.</param>
/// <param name="Verdict">The verdict there.</param>
public sealed record ProvedPlace(
    DeviationSample Sample, double DeviationMm, double SharedMm, double RandomMm, SectorTolerance Tolerance, Verdict Verdict)
{
    /// <summary>u of the averaged deviation, mm.</summary>
    public double StandardUncertaintyMm => double.Hypot(SharedMm, RandomMm);

    /// <summary>How far beyond the nearer bound, mm; negative within the tolerance.</summary>
    public double BeyondMm => Math.Max(DeviationMm - Tolerance.OutsideMm, -Tolerance.InsideMm - DeviationMm);
}
