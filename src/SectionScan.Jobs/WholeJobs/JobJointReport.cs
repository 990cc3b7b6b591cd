using System.Globalization;
using SectionScan.Drawings.Joints;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Summaries;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Joints;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>The part of a job's report that shows a joint.</summary>
/// <param name="match">The joint.</param>
/// <param name="unit">What is shown.</param>
internal sealed class JobJointReport(JointMatch match, LengthUnit unit)
{
    private readonly ShownUnits units = new(unit);

    /// <summary>What the reader must know first.</summary>
    public IEnumerable<SummaryBlock> Findings() => match.Openings.Select(opening => new ParagraphBlock(
        $"Joint of {opening.Manifold.Name} and {opening.Port.Name}: step from {Step(opening.Lowest)} to {Step(opening.Highest)}. "
        + (opening.Stretches.Any(stretch => stretch.IsFacingFlow) ? $"An edge of the {Side(match.Downstream)} faces the flow: cut it, see below." : "No edge faces the flow.")));

    /// <summary>The joint in pictures and figures.</summary>
    public IEnumerable<SummaryBlock> Blocks()
    {
        var first = match.Openings[0];
        yield return new DrawingBlock(
            [JointDrawing.Whole(match, $"{first.Manifold.Name} on {first.Port.Name}", unit, isInReport: true)],
            "The joint at its best place. A step is + where the manifold is the wider one, − where it is narrower.");
        yield return new TableBlock(
            $"Where the manifold came to lie, counted {match.Start}.", ["What", "Value"],
            [
                ["what it is free to do", Freedom(match.Order.Freedom)],
                ["moved to the right", $"{units.Deviation(match.Placement.ShiftXMm)} {units.LengthName}"],
                ["moved up", $"{units.Deviation(match.Placement.ShiftYMm)} {units.LengthName}"],
                ["turned", Text($"{match.Placement.Turn.Degrees:+0.00;−0.00;0.00}°")],
            ]);
        foreach (var block in match.Openings.SelectMany(Opening))
        {
            yield return block;
        }

        foreach (var warning in match.Warnings)
        {
            yield return new NoteBlock(warning.In(units.Words), IsCaution: true);
        }

        if (match.IsCutNeeded)
        {
            yield return new NoteBlock(JointMatch.Caution, IsCaution: true);
        }
    }

    private IEnumerable<SummaryBlock> Opening(OpeningMatch opening)
    {
        var rows = new List<IReadOnlyList<string>>
        {
            Row("step, widest", Step(opening.Highest)),
            Row("step, narrowest", Step(opening.Lowest)),
            Row("U of a step (k = 2)", double.IsNaN(opening.StepStandardUncertaintyMm) ? "not known" : $"{units.Length(Estimate.CoverageFactor * opening.StepStandardUncertaintyMm)} {units.LengthName}"),
            Row("area, port", $"{units.Area(opening.PortAreaMm2)} {units.AreaName}"),
            Row("area, manifold", $"{units.Area(opening.ManifoldAreaMm2)} {units.AreaName}"),
            Row($"area, {Side(match.Downstream)} after the cut", $"{units.Area(opening.CutToAreaMm2)} {units.AreaName}"),
        };
        if (opening.Gasket is { } gasket)
        {
            rows.Add(Row("gasket in the flow", gasket.DeepestInFlow is { } deep ? $"trim it: {Step(deep)}" : "nowhere"));
            rows.Add(Row("gasket outside the opening", gasket.WidestPocket is { } wide ? $"{Step(wide)} (a pocket)" : "nowhere"));
        }

        yield return new TableBlock($"{opening.Manifold.Name} on {opening.Port.Name}, in figures.", ["What", "Value"], rows);
        if (opening.Stretches.Count > 0)
        {
            yield return new TableBlock(
                $"{opening.Port.Name}: where there is a step, counter-clockwise as seen with the flow.",
                ["From", "To", $"Length, {units.LengthName}", $"Mean step, {units.LengthName}", "What to do"],
                [.. opening.Stretches.Select(stretch => Row(
                    Place(stretch.From), Place(stretch.To), units.Length(stretch.LengthMm), units.Deviation(stretch.MeanStepMm),
                    stretch.IsFacingFlow ? $"cut the {Side(stretch.Side)}: its edge faces the flow" : $"may stay: the {Side(stretch.Side)}'s edge is behind the flow"))]);
        }

        yield return new DrawingBlock([JointDrawing.Steps(match, opening, unit, isInReport: true)], $"The step round {opening.Port.Name}, enlarged.");
    }

    private string Freedom(JointFreedom freedom)
    {
        var words = new List<string>();
        if (freedom.Pivot is not null)
        {
            words.Add("turn about the pivot");
        }

        if (freedom.ClearanceMm is { } clearance)
        {
            words.Add($"play of {units.Length(clearance)} {units.LengthName} round {match.Order.Port.Studs.Count} studs");
        }

        if (freedom.MostShiftMm is { } shift)
        {
            words.Add($"shift up to {units.Length(shift)} {units.LengthName}");
        }

        if (freedom.MostTurn is { } turn)
        {
            words.Add(Text($"turn up to {turn.Degrees:0.##}°"));
        }

        return words.Count == 0 ? "as far as it takes" : string.Join(", ", words);
    }

    private string Step(DeviationSample sample) => $"{units.Deviation(sample.DeviationMm)} {units.LengthName} at the {Place(sample)}";

    private static string[] Row(params string[] cells) => cells;

    private static string Place(DeviationSample sample) => Text($"{RegionWords.Of(sample.Region)} ({sample.Direction.Degrees:0;−0;0}°)");

    private static string Side(JointSide side) => side == JointSide.Port ? "port" : "manifold";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
