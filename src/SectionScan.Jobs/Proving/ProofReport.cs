using System.Globalization;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Summaries;
using SectionScan.Jobs.Comparing;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Proof;

namespace SectionScan.Jobs.Proving;

/// <summary>The report of a proof: verdicts, pictures, tables, where everything comes from, what was assumed.</summary>
public static class ProofReport
{
    /// <summary>Makes the report's content, for a browser or for paper.</summary>
    /// <param name="sections">The proved sections, one or more, on the same terms.</param>
    /// <param name="unproved">Why other sections are not proved.</param>
    /// <param name="unit">What lengths are labelled in.</param>
    /// <param name="pictures">Pictures beside the report, by file name and photo.</param>
    /// <param name="footer">Program and version.</param>
    public static SummaryPage Build(
        IReadOnlyList<ProvedSection> sections, IReadOnlyList<Problem> unproved, LengthUnit unit, IReadOnlyList<(string File, string Photo)> pictures, string footer)
    {
        ArgumentNullException.ThrowIfNull(sections);
        ArgumentNullException.ThrowIfNull(unproved);
        ArgumentNullException.ThrowIfNull(pictures);
        var blocks = new List<SummarySection> { new("Verdict", [Verdicts(sections, unit), .. NotProved(unproved), .. Cautions(sections)]) };
        blocks.AddRange(sections.Select(section => new SummarySection(
            char.ToUpperInvariant(section.Title[0]) + section.Title[1..],
            [
                new ParagraphBlock(Sentence(section, unit)),
                new DrawingBlock([section.Draw(unit)], "+ outside the target: metal already gone; − inside the target: metal left."),
                Sectors(section, unit),
            ])));
        if (pictures.Count > 0)
        {
            blocks.Add(new("Pictures", [.. pictures.Select(picture => new PictureBlock(
                picture.File, $"The outlines as measured, drawn over the photo {picture.Photo}.", $"{picture.Photo} with the outlines as measured."))]));
        }

        blocks.Add(new("Where it comes from", [Provenance(sections), Budget(sections, unit)]));
        blocks.Add(new("What was assumed", [.. Assumptions(sections, unit).Select(text => new ParagraphBlock(text))]));
        var worst = sections.Max(section => section.Proof.Verdict);
        var failing = sections.Where(section => section.Proof.Verdict == worst).Select(section => section.Title);
        var introduction = worst == Verdict.Conforms
            ? unproved.Count == 0 ? "Every section conforms to its target." : "Every section that could be proved conforms to its target; others are not proved."
            : $"{(worst == Verdict.DoesNotConform ? "Not every section conforms" : "No section fails, but not every one is proved")}: {string.Join(", ", failing)} {ProofWords.Of(worst)}.";
        return new("Proof of the finished port against its target", introduction, blocks) { Footer = footer };
    }

    internal static TableBlock Verdicts(IReadOnlyList<ProvedSection> sections, LengthUnit unit) => new(
        "Finished against target",
        ["section", "verdict", "too far, most", "metal left, most", "where", "allowed"],
        [.. sections.Select(section =>
        {
            var (proof, finding) = (section.Proof, section.Proof.Findings.Count > 0 ? section.Proof.Findings[0] : null);
            return new[]
            {
                section.Title,
                ProofWords.Of(proof.Verdict),
                WithU(proof.Highest, unit),
                WithU(proof.Lowest, unit),
                finding is null ? "-" : string.Create(CultureInfo.InvariantCulture, $"{RegionWords.Of(finding.Worst.Sample.Region)}, {finding.Worst.Sample.Direction.Degrees:0}°"),
                finding is null ? Bounds(proof.Highest.Tolerance, unit) : Bounds(finding.Worst.Tolerance, unit),
            };
        })]);

    /// <summary>What the reader must know of sections that are not proved.</summary>
    public static IEnumerable<SummaryBlock> NotProved(IReadOnlyList<Problem> unproved) =>
        unproved.Select(problem => new NoteBlock($"Not proved: {problem.Where}. {problem.What}", IsCaution: true));

    internal static IEnumerable<SummaryBlock> Cautions(IReadOnlyList<ProvedSection> sections)
    {
        var findings = sections.SelectMany(section => section.Proof.Findings.Select(finding => (section, finding))).ToList();
        if (findings.Any(each => each.finding.IsTooFar && each.finding.Verdict == Verdict.DoesNotConform))
        {
            yield return new NoteBlock("Metal that is gone does not come back. Measure the wall behind the over-cut before anything else, and let a qualified person decide.", IsCaution: true);
        }

        if (findings.Any(each => !each.finding.IsTooFar && each.finding.Worst.BeyondMm > 0))
        {
            yield return new NoteBlock("Where metal is left, the port can still be finished to its target.");
        }

        yield return new NoteBlock("A proof of shape says nothing of wall thickness, cracks or leaks: pressure test before use. Aircraft, pressure and road-legal work belongs to licensed practice; local codes come first.", IsCaution: true);
    }

    internal static string Sentence(ProvedSection section, LengthUnit unit) => section.Proof.Findings.Count == 0
        ? $"{section.Finished.Name} conforms: every deviation lies within its bounds by more than the guard band."
        : $"{section.Finished.Name} {(section.Proof.Verdict == Verdict.Undecided ? "is undecided" : ProofWords.Of(section.Proof.Verdict))}: "
            + string.Join("; ", section.Proof.Findings.Select(finding => ProofWords.Of(finding, unit))) + ".";

    private static TableBlock Sectors(ProvedSection section, LengthUnit unit) => new(
        $"{section.Title}, sector by sector",
        ["sector", "mean", "lowest", "highest", "allowed", "gone, mm³/mm", "left, mm³/mm", "verdict"],
        [.. section.Regions.Select(region => new[]
        {
            RegionWords.Of(region.Region),
            MeasureText.Deviation(region.MeanMm, unit),
            MeasureText.Deviation(region.LowestMm, unit),
            MeasureText.Deviation(region.HighestMm, unit),
            Bounds(section.Terms.Band.At(region.Region), unit),
            region.GoneMm3PerMm.ToString("0.00", CultureInfo.InvariantCulture),
            region.LeftMm3PerMm.ToString("0.00", CultureInfo.InvariantCulture),
            ProofWords.Of(section.Proof.Places.Where(place => place.Sample.Region == region.Region).Max(place => place.Verdict)),
        })]);

    private static TableBlock Provenance(IReadOnlyList<ProvedSection> sections) => new(
        "Sections",
        ["section", "target", "finished", "photo", "SHA-256 of the photo", "program"],
        [.. sections.Select(section => new[]
        {
            section.Title,
            $"{section.Target.Name} ({Short(section.Target.Sha256)})",
            $"{section.Finished.Name} ({Short(section.Finished.Sha256)})",
            section.Finished.Document?.Photo?.File ?? "-",
            Short(section.Finished.Document?.Photo?.Sha256 ?? string.Empty),
            section.Finished.Document?.Program ?? "-",
        })]);

    private static TableBlock Budget(IReadOnlyList<ProvedSection> sections, LengthUnit unit) => new(
        "Uncertainty of a deviation at its worst place (k = 1)",
        ["section", "u, shared by neighbours", "u, random after averaging", "u", "guard band"],
        [.. sections.Select(section =>
        {
            var place = section.Proof.Places.MaxBy(each => each.StandardUncertaintyMm)!;
            return new[]
            {
                section.Title, Fine(place.SharedMm, unit), Fine(place.RandomMm, unit), Fine(place.StandardUncertaintyMm, unit),
                Fine(section.Terms.Rule.GuardFactor * place.StandardUncertaintyMm, unit),
            };
        })]);

    internal static IEnumerable<string> Assumptions(IReadOnlyList<ProvedSection> sections, LengthUnit unit)
    {
        var terms = sections[0].Terms;
        yield return "Profile of a line after ISO 1101 and ISO 1660: deviations count along the target's normal, positive outward.";
        yield return string.Create(CultureInfo.InvariantCulture, $"Decision rule of ISO 14253-1: the guard band is {terms.Rule.GuardFactor:0.###} times the standard uncertainty{(terms.Rule.GuardFactor == DecisionRule.UsualGuardFactor ? " (95 % at one bound)" : string.Empty)}. Within the tolerance by more than that conforms, beyond by more does not conform, between is undecided.");
        yield return $"Deviations are averaged over {MeasureText.Length(new(terms.OverMm, 0), unit)} of wall before they are judged.";
        yield return $"The finished section was laid on the target by {AlignmentWords.Of(terms.Alignment)}. The place and turn of a port within the head are not proved by a slice that a best fit has moved.";
        yield return sections.All(section => section.Target.IsExact)
            ? "A target shape is exact: what it was made from has no part in the uncertainty."
            : "A measured section stands for the target; its own error is counted.";
        yield return "The errors of the two sections count as independent. The slices were cut square to the port and at the same stations: a slice askew by 5° shows 0.4 % more area (1/cos 5°).";
        yield return terms.OtherMm > 0
            ? $"A further standard uncertainty of {Fine(terms.OtherMm, unit)} was given for what no document knows."
            : "Shrinkage of the mould is counted only as far as the section documents name it.";
        var assumed = sections.SelectMany(section => section.Finished.ErrorSources.Where(source => source.IsAssumed).Select(source => source.Name)).Distinct().ToList();
        if (assumed.Count > 0)
        {
            yield return $"Sizes assumed and not derived from these photos: {string.Join(", ", assumed)}.";
        }

        foreach (var warning in sections.SelectMany(section => (section.Finished.Document?.Section.Warnings ?? []).Select(text => $"{section.Title}: {text}")))
        {
            yield return warning;
        }
    }

    private static string WithU(ProvedPlace place, LengthUnit unit) =>
        $"{MeasureText.Deviation(place.DeviationMm, unit)} ± {MeasureText.Length(new(Estimate.CoverageFactor * place.StandardUncertaintyMm, 0), unit)}";

    private static string Bounds(SectorTolerance tolerance, LengthUnit unit) =>
        $"{MeasureText.Deviation(-tolerance.InsideMm, unit).Split(' ')[0]} / {MeasureText.Deviation(tolerance.OutsideMm, unit)}";

    private static string Fine(double lengthMm, LengthUnit unit) => unit == LengthUnit.Inch
        ? string.Create(CultureInfo.InvariantCulture, $"{lengthMm / 25.4:0.0000} in")
        : string.Create(CultureInfo.InvariantCulture, $"{lengthMm:0.000} mm");

    private static string Short(string sha256) => sha256.Length > 12 ? sha256[..12] + "..." : "-";
}
