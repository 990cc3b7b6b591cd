using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Cutting;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Cutting;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Cutting;

/// <summary>Shows the walls that are left between a port and what lies behind.</summary>
internal sealed class WallsCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<WallsSettings>
{
    public override int Execute(CommandContext context, WallsSettings settings, CancellationToken cancellationToken)
    {
        var unit = settings.Units.OfLength;
        IReadOnlyList<string> files = [];
        if (!Study(settings).TryGet(out var study, out var problem)
            || (settings.Out is not null && !WallsFiles.Write(study, unit, PaperSize.FromName(settings.Paper)!, settings.Out).TryGet(out files!, out problem)))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var report = WallsReport.Of(study);

        if (settings.IsJson)
        {
            json.Write(report);
        }
        else
        {
            Show(report, unit);
            foreach (var file in files)
            {
                terminal.Answers.WriteLine(file);
            }
        }

        return ExitCode.Done;
    }

    private static Result<WallsStudy> Study(WallsSettings settings)
    {
        var library = LibraryOption.PathOf(settings.Library);
        SectionInput? target = null, finished = null;
        if (!SectionInput.Read(settings.Present, library, TimeProvider.System).TryGet(out var present, out var problem)
            || (settings.Target is not null && !SectionInput.Read(settings.Target, library, TimeProvider.System).TryGet(out target, out problem))
            || (settings.Finished is not null && !SectionInput.Read(settings.Finished, library, TimeProvider.System).TryGet(out finished, out problem)))
        {
            return problem;
        }

        return WallsReport.ReadWalls(settings.KeepOuts!).Then(walls =>
            WallsStudy.Of(present, target, finished, walls, settings.Method, settings.Assumptions, settings.KeepOuts!));
    }

    private void Show(WallsReport report, LengthUnit unit)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumn("wall to").AddColumn("outline").AddColumn("side");
        foreach (var heading in new[] { "wall", "U (k = 2)", "limit", "chance under it" })
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        foreach (var wall in report.Walls)
        {
            table.AddRow(
                Markup.Escape(wall.KeepOut), wall.Stage, wall.Side, Length(wall.WallMm), Length(wall.ExpandedUncertaintyMm), Length(wall.LimitMm),
                FormattableString.Invariant($"{100 * wall.ChanceUnderLimit:0.0} %") + (wall.NeedsCaution ? "  CAUTION" : string.Empty));
        }

        terminal.WriteTable(table);
        foreach (var least in report.Least)
        {
            terminal.Answers.WriteLine(
                FormattableString.Invariant($"Thinnest wall of the {least.Stage} outline: {Length(least.WallMm)} to {least.KeepOut}, {least.Side}, at ({least.At[0]:0.0;-0.0;0.0}, {least.At[1]:0.0;-0.0;0.0}) mm.")
                + (least.WallMm < 0 ? " This is a break-through." : string.Empty));
        }

        foreach (var words in report.Assumptions)
        {
            terminal.Answers.WriteLine(words);
        }

        terminal.Answers.WriteLine(CutCautions.InShort);

        string Length(double lengthMm) => MeasureText.Length(new(lengthMm, 0), unit);
    }
}
