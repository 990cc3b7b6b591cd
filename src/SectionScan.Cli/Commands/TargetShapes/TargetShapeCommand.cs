using System.Globalization;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Cutting;
using SectionScan.Jobs.TargetShapes;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.TargetShapes;
using SectionScan.Porting.Walls;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.TargetShapes;

/// <summary>Settles a target shape for each station.</summary>
internal sealed class TargetShapeCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<TargetShapeSettings>
{
    public override int Execute(CommandContext context, TargetShapeSettings settings, CancellationToken cancellationToken)
    {
        var library = LibraryOption.PathOf(settings.Library);
        if (!SectionFiles.Read(settings.Own, library, TimeProvider.System).TryGet(out var own, out var problem)
            || !SectionFiles.Read(settings.Reference, library, TimeProvider.System).TryGet(out var reference, out problem)
            || !SectionFiles.Paired(own, reference).TryGet(out var paired, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var walls = PortWalls.None;
        if (settings.KeepOuts is not null && !WallsReport.ReadWalls(settings.KeepOuts).TryGet(out walls!, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var targets = new List<SettledTarget>();
        var failed = new List<Problem>();
        foreach (var missing in paired.Missing)
        {
            problems.PrintWarning(missing);
        }

        var choice = settings.Choice with { Walls = walls };
        foreach (var (first, second) in paired.Pairs)
        {
            cancellationToken.ThrowIfCancellationRequested();
            if (SettledTarget.Of(first, second, choice).TryGet(out var target, out problem))
            {
                targets.Add(target);
            }
            else
            {
                failed.Add(problem);
            }
        }

        failed.ForEach(problems.Print);
        var unit = settings.Units.OfLength;
        IReadOnlyList<string> files = [];
        if (settings.Out is not null && targets.Count > 0 && !TargetShapeFiles.Write(targets, unit, settings.Out).TryGet(out files!, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(TargetShapeAnswer.Of(targets));
        }
        else
        {
            Show(targets, choice.Shares, unit);
            foreach (var file in files)
            {
                terminal.Answers.WriteLine(file);
            }
        }

        return ExitCode.OfBatch(targets.Count, failed.Count);
    }

    private void Show(List<SettledTarget> targets, SectorShares shares, LengthUnit unit)
    {
        if (targets.Count == 0)
        {
            return;
        }

        var table = new Table().Border(TableBorder.Simple).AddColumn("station");
        foreach (var heading in new[] { "own area", "target area", "reference", "width", "height" })
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        foreach (var part in TargetShapeAnswer.Of(targets).Targets)
        {
            table.AddRow(
                part.Station?.ToString(CultureInfo.InvariantCulture) ?? part.Name, Area(part.Own.AreaMm2, unit), Area(part.Target.AreaMm2, unit), Area(part.Reference.AreaMm2, unit),
                Length(part.Target.WidthMm, unit), Length(part.Target.HeightMm, unit));
        }

        terminal.WriteTable(table);
        foreach (var target in targets)
        {
            foreach (var limit in target.Shape.Limits)
            {
                terminal.Answers.WriteLine($"{target.Name}: {LimitWords.Of(limit)}: {LimitWords.Effect(limit)}");
            }

            foreach (var warning in target.Document.Section.Warnings)
            {
                terminal.Answers.WriteLine($"{target.Name}: {warning}");
            }

            if (SectorBlends.InWords(target.Own.Outline, target.Shape.Outline, shares) is { } blends)
            {
                terminal.Answers.WriteLine($"{target.Name}: {blends}");
            }

            if (target.Shape.Missed is not null)
            {
                terminal.Answers.WriteLine($"{target.Name}: {target.Document.TargetShape!.Steps.First(step => step.Contains("could not be reached", StringComparison.Ordinal))}");
            }
        }

        terminal.Answers.WriteLine("A target says how far to go, not that the wall behind is thick enough: measure walls before you cut.");
    }

    private static string Area(double areaMm2, LengthUnit unit) => MeasureText.Area(new Estimate(areaMm2, 0), unit);

    private static string Length(double lengthMm, LengthUnit unit) => MeasureText.Length(new Estimate(lengthMm, 0), unit);
}
