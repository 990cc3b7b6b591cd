using System.Globalization;
using SectionScan.Drawings.Cutting;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Summaries;
using SectionScan.Jobs.Proving;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Proof;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>The part of a job's report that shows targets, cut plans, proofs and joints.</summary>
/// <param name="work">The work.</param>
/// <param name="unit">What is shown.</param>
internal sealed class JobWorkReport(JobWork work, LengthUnit unit)
{
    private readonly ShownUnits units = new(unit);

    /// <summary>What the reader must know first.</summary>
    public IEnumerable<SummaryBlock> Findings()
    {
        foreach (var proof in work.Proofs)
        {
            var failing = proof.Sections.Where(section => section.Proof.Verdict == Verdict.DoesNotConform).Select(section => section.Title).ToList();
            var open = proof.Sections.Count(section => section.Proof.Verdict == Verdict.Undecided);
            yield return failing.Count > 0
                ? new NoteBlock($"Proof of {proof.Asked.Port} against {proof.Asked.Against}: {string.Join(", ", failing)} {(failing.Count == 1 ? "does" : "do")} not conform.", IsCaution: true)
                : new ParagraphBlock($"Proof of {proof.Asked.Port} against {proof.Asked.Against}: "
                    + (open == 0 ? "every section conforms." : Text($"no section fails, {open} {(open == 1 ? "is" : "are")} undecided.")));
        }

        foreach (var found in work.Joints.SelectMany(joint => new JobJointReport(joint.Match, unit).Findings()))
        {
            yield return found;
        }
    }

    /// <summary>The sections of the report.</summary>
    public IEnumerable<SummarySection> Sections()
    {
        if (work.Targets.Count > 0)
        {
            yield return new("Targets", [.. Targets()]);
        }

        foreach (var plan in work.Plans)
        {
            yield return new($"Cut plan: {plan.Asked.Port} to {plan.Asked.Toward}", [.. Plan(plan)]);
        }

        foreach (var proof in work.Proofs)
        {
            yield return new($"Proof: {proof.Asked.Port} against {proof.Asked.Against}", [.. Proof(proof)]);
        }

        foreach (var joint in work.Joints)
        {
            yield return new($"Joint: {joint.Match.Openings[0].Manifold.Name} on {joint.Match.Openings[0].Port.Name}", [.. new JobJointReport(joint.Match, unit).Blocks()]);
        }
    }

    private IEnumerable<SummaryBlock> Targets()
    {
        var shapes = work.Targets.Select(target => (target, Facts: MeasuredOutline.Of(target.Outline, []))).ToList();
        yield return new DrawingBlock(
            [.. shapes.Select(each => SectionDrawing.Build(each.target.Outline, new(
                each.target.Title, each.Facts[MeasureCatalogue.Width].Estimate, each.Facts[MeasureCatalogue.Height].Estimate) { AreaMm2 = each.Facts[MeasureCatalogue.Area].Estimate, Unit = unit, SaysTrueSize = false }))],
            "Shapes to work toward; a target is exact by definition.");
    }

    private IEnumerable<SummaryBlock> Plan(PlannedCut planned)
    {
        var (plan, cuts) = (planned.Plan, planned.Plan.Stations);
        var rows = plan.SummaryRows();
        yield return new TableBlock(
            $"What there is to cut, station by station; roughing leaves {units.Length(plan.Order.AllowanceMm)} {units.LengthName} for finishing.", rows[0], [.. rows.Skip(1)]);
        var regions = Enum.GetValues<OutlineRegion>();
        yield return new TableBlock(
            $"Depth to cut in all, the most of each sector, {units.LengthName}, as seen with the flow; U of a depth up to {units.Length(cuts.Max(station => station.Cut.DepthExpandedUncertaintyMm))} {units.LengthName} (k = 2).",
            ["Station", .. regions.Select(RegionWords.Of)],
            [.. cuts.Select(station => (IReadOnlyList<string>)
                [Number(station), .. regions.Select(region => station.Cut.Sectors.FirstOrDefault(sector => sector.Region == region) is { } sector ? units.Length(Math.Max(0, sector.MostAtFinishMm)) : "–")])]);
        yield return new DrawingBlock(
            [.. cuts.Select(station => CutPlanPage.Small(station.Cut, station.Title, unit))],
            $"Full line: {planned.Asked.Toward}; dashed: {planned.Asked.Port}. Figures: depth now / at finish, the most of each side. Dark: cut now; light: left for finishing; where the dashed line lies outside the full one the metal is gone already.");
        yield return new ParagraphBlock("Order of work (common practice, no source):");
        var steps = plan.Steps;
        yield return new TableBlock("Step by step.", ["Step", "What"], [.. steps.Select((step, i) => (IReadOnlyList<string>)[Text($"{i + 1}"), step])]);
        foreach (var alone in plan.Alone)
        {
            yield return new NoteBlock($"Not planned, for only one of the two has it: {alone.Name}.", IsCaution: true);
        }

        if (cuts.All(station => station.Cut.Walls.Count == 0))
        {
            yield return new NoteBlock("No keep-outs were given: this plan knows nothing of the walls. Measure them before cutting.", IsCaution: true);
        }

        foreach (var caution in Porting.Cutting.CutCautions.All)
        {
            yield return new NoteBlock(caution, IsCaution: true);
        }
    }

    private IEnumerable<SummaryBlock> Proof(ProvedPort proved)
    {
        yield return ProofReport.Verdicts(proved.Sections, unit);
        foreach (var note in ProofReport.NotProved(proved.Unproved))
        {
            yield return note;
        }

        foreach (var section in proved.Sections.Where(section => section.Proof.Findings.Count > 0))
        {
            yield return new ParagraphBlock($"{section.Title}: {ProofReport.Sentence(section, unit)}");
        }

        yield return new DrawingBlock(
            [.. proved.Sections.Select(section => section.DrawSmall(unit))],
            "Target (full line) and finished section (thin dashes); bands enlarged: with a full edge outside the target (+, metal already gone), with a dashed edge inside it (−, metal left).");

        foreach (var caution in ProofReport.Cautions(proved.Sections))
        {
            yield return caution;
        }

        foreach (var assumed in ProofReport.Assumptions(proved.Sections, unit))
        {
            yield return new ParagraphBlock(assumed);
        }
    }

    private static string Number(Cutting.StationPlan station) => station.Station is { } number ? Text($"{number}") : station.Title;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
