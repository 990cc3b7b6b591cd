using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Proof;

/// <summary>A finished section against its target.</summary>
/// <param name="Target">The target's outline.</param>
/// <param name="Finished">The finished outline as it was laid on the target.</param>
/// <param name="Places">Every place of the target, counter-clockwise.</param>
/// <param name="Findings">Where it does not conform or is undecided, worst first; empty when it conforms.</param>
public sealed record SectionProof(Outline Target, AlignedOutline Finished, IReadOnlyList<ProvedPlace> Places, IReadOnlyList<Finding> Findings)
{
    /// <summary>How far apart the places are, mm.</summary>
    private const double SpacingMm = 0.25;

    /// <summary>The verdict on the whole section: one place that does not conform decides.</summary>
    public Verdict Verdict => Places.Max(place => place.Verdict);

    /// <summary>Where the wall lies farthest outside the target.</summary>
    public ProvedPlace Highest => Places.MaxBy(place => place.DeviationMm)!;

    /// <summary>Where it lies farthest inside.</summary>
    public ProvedPlace Lowest => Places.MinBy(place => place.DeviationMm)!;

    /// <summary>The profile of a line as one number: the width of the least even zone about the target that holds the wall, mm (ISO 1101).</summary>
    public double ProfileMm => 2 * Places.Max(place => Math.Abs(place.DeviationMm));

    /// <summary>Proves a section.</summary>
    /// <param name="target">The target, and its causes of error: none for a target shape, which is exact.</param>
    /// <param name="finished">The finished section as laid on the target.</param>
    /// <param name="finishedOwn">The finished section in its own frame with its causes of error.</param>
    /// <param name="terms">Tolerance, decision rule and averaging length.</param>
    public static SectionProof Of(
        (Outline Outline, IReadOnlyList<OutlineErrorSource> ErrorSources) target,
        AlignedOutline finished,
        (Outline Outline, IReadOnlyList<OutlineErrorSource> ErrorSources) finishedOwn,
        ProofTerms terms)
    {
        ArgumentNullException.ThrowIfNull(finished);
        ArgumentNullException.ThrowIfNull(terms);
        var samples = OutlineComparison.Samples(target.Outline, finished.Outline, SpacingMm);
        var (measured, reference) = (
            DeviationUncertainty.Of(samples, new(finishedOwn.Outline, finished.Outline, finishedOwn.ErrorSources, false, finished.Transform.IsMirrored), terms.Alignment, terms.OverMm),
            DeviationUncertainty.Of(samples, new(target.Outline, target.Outline, target.ErrorSources, true, false), terms.Alignment, terms.OverMm));
        var averaged = Averaged(samples, terms.OverMm);
        var places = samples.Select((sample, i) =>
        {
            var tolerance = terms.Band.At(sample.Region);
            var (shared, random) = (
                double.Hypot(double.Hypot(measured[i].SharedMm, reference[i].SharedMm), terms.OtherMm),
                double.Hypot(measured[i].RandomMm, reference[i].RandomMm));
            return new ProvedPlace(
                sample, averaged[i], shared, random, tolerance,
                terms.Rule.Judge(averaged[i], double.Hypot(shared, random), -tolerance.InsideMm, tolerance.OutsideMm));
        }).ToList();
        return new(target.Outline, finished, places, ProofFindings.In(places, SpacingOf(samples)));
    }

    /// <summary>Running means over a length of the outline: the worst of many noisy places is no depth of a cut.</summary>
    private static double[] Averaged(IReadOnlyList<DeviationSample> samples, double overMm)
    {
        var reach = (int)Math.Round(overMm / SpacingOf(samples) / 2);
        return [.. samples.Select((_, i) => Enumerable.Range(i - reach, (2 * reach) + 1)
            .Average(k => samples[((k % samples.Count) + samples.Count) % samples.Count].DeviationMm))];
    }

    private static double SpacingOf(IReadOnlyList<DeviationSample> samples) =>
        samples.Select((sample, i) => sample.Reference.DistanceTo(samples[(i + 1) % samples.Count].Reference)).Average();
}
