using SectionScan.Jobs.Comparing;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Proof;

namespace SectionScan.Jobs.Proving;

/// <summary>Proofs as one document for programs. Lengths in mm, angles in degrees, U with k = 2.</summary>
/// <param name="Schema">Its schema's name.</param>
/// <param name="Verdict">The worst verdict of all sections.</param>
/// <param name="Alignment">How the sections were laid on their targets.</param>
/// <param name="GuardFactor">The guard band over the standard uncertainty.</param>
/// <param name="OverMm">The length that deviations were averaged over.</param>
/// <param name="Sections">One for each section.</param>
public sealed record ProofAnswer(
    string Schema, string Verdict, string Alignment, double GuardFactor, double OverMm, IReadOnlyList<ProofAnswer.SectionPart> Sections)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/prove/1";

    /// <summary>Makes the answer.</summary>
    /// <param name="sections">The proved sections, one or more.</param>
    public static ProofAnswer Of(IReadOnlyList<ProvedSection> sections)
    {
        ArgumentNullException.ThrowIfNull(sections);
        var terms = sections[0].Terms;
        return new(
            SchemaName, ProofWords.Of(sections.Max(section => section.Proof.Verdict)), AlignmentWords.Of(terms.Alignment),
            terms.Rule.GuardFactor, terms.OverMm, [.. sections.Select(SectionPart.Of)]);
    }

    /// <summary>One section.</summary>
    public sealed record SectionPart(
        int? Station, string Target, string Finished, string Verdict, double ProfileMm, PlacePart Highest, PlacePart Lowest,
        IReadOnlyList<FindingPart> Findings, IReadOnlyList<RegionPart> Regions)
    {
        internal static SectionPart Of(ProvedSection section) => new(
            section.Finished.Station, section.Target.Name, section.Finished.Name, ProofWords.Of(section.Proof.Verdict), section.Proof.ProfileMm,
            PlacePart.Of(section.Proof.Highest), PlacePart.Of(section.Proof.Lowest),
            [.. section.Proof.Findings.Select(finding => new FindingPart(
                ProofWords.Of(finding.Verdict), finding.IsTooFar, PlacePart.Of(finding.Worst), finding.FromDeg, finding.ToDeg, finding.LengthMm))],
            [.. section.Regions.Select(r => new RegionPart(
                RegionWords.Of(r.Region), r.MeanMm, r.LowestMm, r.HighestMm, r.LengthMm, r.GoneMm3PerMm, r.LeftMm3PerMm))]);
    }

    /// <summary>One place with its bounds.</summary>
    public sealed record PlacePart(
        double DeviationMm, double ExpandedUncertaintyMm, double XMm, double YMm, double DirectionDeg, string Region, double InsideMm, double OutsideMm)
    {
        internal static PlacePart Of(ProvedPlace place) => new(
            place.DeviationMm, Estimate.CoverageFactor * place.StandardUncertaintyMm, place.Sample.Reference.XMm, place.Sample.Reference.YMm,
            place.Sample.Direction.Degrees, RegionWords.Of(place.Sample.Region), place.Tolerance.InsideMm, place.Tolerance.OutsideMm);
    }

    /// <summary>A stretch that does not conform or is undecided.</summary>
    public sealed record FindingPart(string Verdict, bool IsTooFar, PlacePart Worst, double FromDeg, double ToDeg, double LengthMm);

    /// <summary>One sector's figures, averaged deviations; metal in mm³ for each mm of port.</summary>
    public sealed record RegionPart(
        string Region, double MeanMm, double LowestMm, double HighestMm, double LengthMm, double GoneMm3PerMm, double LeftMm3PerMm);
}
