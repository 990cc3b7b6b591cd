using SectionScan.Drawings.Comparisons;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Comparing;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Proof;

namespace SectionScan.Jobs.Proving;

/// <summary>A finished section proved against its target.</summary>
/// <param name="Target">The target.</param>
/// <param name="Finished">The finished section.</param>
/// <param name="Terms">On what terms.</param>
/// <param name="Proof">What came out.</param>
public sealed record ProvedSection(SectionInput Target, SectionInput Finished, ProofTerms Terms, SectionProof Proof)
{
    /// <summary>Proves a section.</summary>
    /// <param name="target">The target; a measured section counts with its own error.</param>
    /// <param name="finished">The finished section.</param>
    /// <param name="terms">On what terms. Without another uncertainty in them, an outline of unknown error is refused.</param>
    public static Result<ProvedSection> Of(SectionInput target, SectionInput finished, ProofTerms terms)
    {
        ArgumentNullException.ThrowIfNull(target);
        ArgumentNullException.ThrowIfNull(finished);
        ArgumentNullException.ThrowIfNull(terms);
        if (terms.OtherMm == 0 && new[] { target, finished }.FirstOrDefault(section => !section.IsErrorKnown) is { } unknown)
        {
            return ProvingProblems.ErrorNotKnown(unknown.Name);
        }

        return target.LaidOnMe(finished, terms.Alignment).Then<ProvedSection>(laid => new ProvedSection(target, finished, terms, SectionProof.Of(
            (target.Outline, target.IsExact ? [] : target.ErrorSources), laid, (finished.Outline, finished.ErrorSources), terms)));
    }

    /// <summary>What to call it: "station 4".</summary>
    public string Title => Finished.Title;

    /// <summary>The metal between finished wall and target sector by sector.</summary>
    public IReadOnlyList<RegionDeviation> Regions => RegionDeviations.Of(Proof.Target, [.. Proof.Places.Select(place => place.Sample with { DeviationMm = place.DeviationMm })]);

    /// <summary>The drawing: finished on target, deviations round it, verdict.</summary>
    /// <param name="unit">What lengths are labelled in.</param>
    public Page Draw(LengthUnit unit) => ComparisonDrawing.Build(
        Proof.Target, Proof.Finished.Outline, Marks, new($"{Finished.Name} proved against {Target.Name}", Target.Name, Finished.Name)
        {
            Notes = [.. Notes(unit, $", {AlignmentWords.Of(Terms.Alignment)}"), .. Proof.Findings.Take(3).Select(finding => ProofWords.Of(finding, unit))],
            Unit = unit,
        });

    /// <summary>The drawing small enough for two beside each other on a sheet.</summary>
    /// <param name="unit">What lengths are labelled in.</param>
    public Page DrawSmall(LengthUnit unit) => ComparisonDrawing.Small(
        Proof.Target, Proof.Finished.Outline, Marks, new(Finished.Name, Target.Name, Finished.Name) { Notes = Notes(unit, ""), Unit = unit });

    private IReadOnlyList<DeviationMark> Marks => DeviationMark.Of([.. Proof.Places.Select(place => place.Sample with { DeviationMm = place.DeviationMm })]);

    private string[] Notes(LengthUnit unit, string alignment) =>
    [
        $"{ProofWords.Of(Proof.Verdict)}; profile of a line {MeasureText.Length(new(Proof.ProfileMm, 0), unit)}, mean deviation {MeasureText.Deviation(Proof.Places.Average(place => place.DeviationMm), unit)}",
        $"U of a deviation up to {MeasureText.Length(new(Estimate.CoverageFactor * Proof.Places.Max(place => place.StandardUncertaintyMm), 0), unit)} (k = 2){alignment}",
    ];
}
