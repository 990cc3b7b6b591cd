using System.Globalization;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Joints;
using SectionScan.Jobs.Lenses;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Joints;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Joint;

/// <summary>Matches a manifold to a port.</summary>
internal sealed class JointCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<JointSettings>
{
    public override int Execute(CommandContext context, JointSettings settings, CancellationToken cancellationToken)
    {
        LensProfile? lens = null;
        if (settings.Lens is not null && !LensFiles.Read(settings.Lens).TryGet(out lens, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var unit = settings.Units.OfLength;
        if (!MatchJoint.Run(JobOf(settings, lens, unit)).TryGet(out var outcome, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        foreach (var warning in outcome.Match.Warnings)
        {
            problems.PrintWarning(new Problem("warning", warning.In(new ShownUnits(unit).Words), "joint", "Look at the picture before you cut."));
        }

        if (settings.IsJson)
        {
            json.Write(JointAnswer.Of(outcome));
        }
        else
        {
            Show(outcome, unit);
        }

        return ExitCode.Done;
    }

    private static JointJob JobOf(JointSettings settings, LensProfile? lens, LengthUnit unit)
    {
        var how = new DigitiseSettings
        {
            LooksForOpenings = true,
            Lens = lens,
            PrintRatio = settings.PrintRatio is { } ratio ? (ratio.X, ratio.Y) : null,
        };
        return new(
            new("port", settings.Port, settings.PortStuds?.Places ?? [], settings.Pivot?.Places[0], JointSettings.ViewOf(settings.PortSeen)),
            new("manifold", settings.Manifold, settings.ManifoldStuds?.Places ?? [], settings.Pivot?.Places[1], JointSettings.ViewOf(settings.ManifoldSeen)),
            settings.Gasket.Length == 0 ? null : new("gasket", settings.Gasket, settings.GasketStuds?.Places ?? [], null, JointSettings.ViewOf(settings.PortSeen)),
            settings.FlowChosen,
            new() { ClearanceMm = settings.Clearance, MostShiftMm = settings.Shift, MostTurn = settings.Turn is { } turn ? Angle.FromDegrees(turn) : null },
            settings.Allow, how, settings.Out, PaperSize.FromName(settings.Paper)!, unit);
    }

    private void Show(JointOutcome outcome, LengthUnit unit)
    {
        var match = outcome.Match;
        terminal.Answers.WriteLine(match.Order.Flow == JointFlow.Intake
            ? "Intake, seen with the flow: step + where the manifold is wider (the port's edge faces the flow), − where it is narrower"
            : "Exhaust, seen with the flow: step + where the manifold is wider, − where it is narrower (the manifold's edge faces the flow)");
        var placed = match.Placement;
        terminal.Answers.WriteLine($"The manifold's shift and turn are counted {match.Start}{(match.Order.Freedom == new JointFreedom() ? "; nothing was said of studs, pivot or limits, so that it was laid wherever the edges lie best" : string.Empty)}.");
        var figures = new Table().Border(TableBorder.Simple).HideHeaders().AddColumn("figure").AddColumn("value");
        figures.AddRow("shift to the right", Signed(placed.ShiftXMm, match.PlacementUncertainty?.XMm, unit));
        figures.AddRow("shift up", Signed(placed.ShiftYMm, match.PlacementUncertainty?.YMm, unit));
        figures.AddRow("turn, counter-clockwise", string.Create(CultureInfo.InvariantCulture, $"{placed.Turn.Degrees:+0.00;−0.00;0.00}°") + (match.PlacementUncertainty is { } u
            ? string.Create(CultureInfo.InvariantCulture, $" ± {2 * double.RadiansToDegrees(u.TurnRad):0.00}°") : string.Empty));
        figures.AddRow("edges apart, rms", MeasureText.Length(new(placed.RmsMm, 0), unit));
        terminal.WriteTable(figures);
        foreach (var opening in match.Openings)
        {
            Show(match, opening, unit);
        }

        if (match.IsCutNeeded)
        {
            terminal.Answers.WriteLine(JointMatch.Caution);
        }

        foreach (var file in outcome.Files)
        {
            terminal.Answers.WriteLine(file);
        }
    }

    private void Show(JointMatch match, OpeningMatch opening, LengthUnit unit)
    {
        var cut = match.Downstream == JointSide.Port ? "port" : "manifold";
        terminal.Answers.WriteLine($"{opening.Manifold.Name} on {opening.Port.Name}");
        var figures = new Table().Border(TableBorder.Simple).HideHeaders().AddColumn("figure").AddColumn("value");
        figures.AddRow("area, port", MeasureText.Area(opening.PortAreaMm2, unit));
        figures.AddRow("area, manifold", MeasureText.Area(opening.ManifoldAreaMm2, unit));
        figures.AddRow($"area, {cut} after the cut", MeasureText.Area(opening.CutToAreaMm2, unit));
        figures.AddRow("area that the cut takes", MeasureText.Area(opening.RemovedMm2, unit));
        figures.AddRow("widest step", Place(opening.Highest, unit));
        figures.AddRow("narrowest step", Place(opening.Lowest, unit));
        figures.AddRow("U of a step (k = 2)", double.IsNaN(opening.StepStandardUncertaintyMm)
            ? "not known" : MeasureText.Length(new(2 * opening.StepStandardUncertaintyMm, 0), unit));
        if (opening.Gasket is { } gasket)
        {
            figures.AddRow("gasket in the flow", gasket.DeepestInFlow is { } deep ? "trim it: " + Place(deep, unit) : "nowhere");
            figures.AddRow("gasket outside the opening", gasket.WidestPocket is { } wide ? Place(wide, unit) + " (a pocket)" : "nowhere");
        }

        terminal.WriteTable(figures);
        if (opening.Stretches.Count == 0)
        {
            terminal.Answers.WriteLine("No step can be told from none: nothing to cut.");
            return;
        }

        var table = new Table().Border(TableBorder.Simple).AddColumn("stretch").AddColumn("what to do");
        foreach (var heading in new[] { "length", "mean step", "largest step" })
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        foreach (var stretch in opening.Stretches)
        {
            var side = stretch.Side == JointSide.Port ? "port" : "manifold";
            table.AddRow(
                FormattableString.Invariant($"{RegionWords.Of(stretch.From.Region)} ({stretch.From.Direction.Degrees:0}°) to {RegionWords.Of(stretch.To.Region)} ({stretch.To.Direction.Degrees:0}°)"),
                stretch.IsFacingFlow ? $"cut the {side}: its edge faces the flow" : $"may stay: the {side}'s edge is behind the flow",
                MeasureText.Length(new(stretch.LengthMm, 0), unit), MeasureText.Deviation(stretch.MeanStepMm, unit),
                Place(stretch.Deepest, unit));
        }

        terminal.WriteTable(table);
    }

    private static string Signed(double valueMm, double? standardUncertaintyMm, LengthUnit unit) =>
        MeasureText.Deviation(valueMm, unit) + (standardUncertaintyMm is { } u ? $" ± {MeasureText.Length(new(2 * u, 0), unit)}" : string.Empty);

    private static string Place(DeviationSample sample, LengthUnit unit) =>
        MeasureText.Deviation(sample.DeviationMm, unit) + FormattableString.Invariant($" at the {RegionWords.Of(sample.Region)} ({sample.Direction.Degrees:0}°)");
}
