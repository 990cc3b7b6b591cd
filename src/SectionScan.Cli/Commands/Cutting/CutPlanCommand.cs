using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Cutting;
using SectionScan.Jobs.Ports;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Cutting;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Walls;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Cutting;

/// <summary>Plans a cut.</summary>
internal sealed class CutPlanCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<CutPlanSettings>
{
    public override int Execute(CommandContext context, CutPlanSettings settings, CancellationToken cancellationToken)
    {
        IReadOnlyList<string> files = [];
        if (!Plan(settings).TryGet(out var plan, out var problem) || (settings.Out is not null && !plan.Write(settings.Out).TryGet(out files!, out problem)))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        foreach (var missing in plan.Unplanned)
        {
            problems.PrintWarning(missing);
        }

        if (settings.IsJson)
        {
            json.Write(CutPlanAnswer.Of(plan, files));
            return ExitCode.Done;
        }

        Show(plan);
        foreach (var file in files)
        {
            terminal.Answers.WriteLine(file);
        }

        return ExitCode.Done;
    }

    private static Result<CutPlan> Plan(CutPlanSettings settings)
    {
        var walls = PortWalls.None;
        if (settings.KeepOuts is not null && !WallsReport.ReadWalls(settings.KeepOuts).TryGet(out walls, out var problem))
        {
            return problem;
        }

        StationTable? places = null;
        if (settings.Stations is not null && !PortFiles.ReadStations(settings.Stations).TryGet(out places, out var unusable))
        {
            return unusable;
        }

        return CutPlan.Of(
            new(
                settings.Present, settings.Target, settings.Method, settings.AllowanceMm, settings.Port.Trim(), walls, settings.Assumptions, settings.SpacingMm,
                PaperSize.FromName(settings.Paper)!, settings.Units.OfLength)
            {
                Places = places,
            },
            LibraryOption.PathOf(settings.Library),
            TimeProvider.System);
    }

    private void Show(CutPlan plan)
    {
        var numbers = new ShownUnits(plan.Order.Unit);
        terminal.Answers.WriteLine(
            $"Depths and walls in {numbers.LengthName}, metal in {numbers.AreaName} of section. Now: roughing, which leaves {Length(plan.Order.AllowanceMm)} {numbers.LengthName} for finishing (--allowance).");
        Write(
        [
            ["station", "most now", "most at finish", "metal now", "metal in all", "wall", "chance under limit"],
            .. plan.Stations.Select(station => (IReadOnlyList<string>)
            [
                station.Title, Length(station.Cut.Places.Max(place => place.NowMm)), Length(station.Cut.Places.Max(place => place.AtFinishMm)),
                Area(station.Cut.NowMm2), Area(station.Cut.AtFinishMm2), .. Wall(station.Cut),
            ]),
        ]);
        foreach (var station in plan.Stations)
        {
            terminal.Answers.WriteLine($"{station.Title}: {station.Present.Name} to {station.Target.Name}");
            Write(
            [
                ["side", "mean now", "most now", "mean at finish", "most at finish", "metal now", "metal in all", "to leave"],
                .. station.Cut.Sectors.Select(sector => (IReadOnlyList<string>)
                [
                    RegionWords.Of(sector.Region), Length(sector.MeanNowMm), Length(sector.MostNowMm), Length(sector.MeanAtFinishMm), Length(sector.MostAtFinishMm),
                    Area(sector.NowMm2), Area(sector.AtFinishMm2), FormattableString.Invariant($"{100 * sector.ShareToLeave:0} %"),
                ]),
            ]);
        }

        if (plan.NowMm3 is { } now && plan.AtFinishMm3 is { } all)
        {
            terminal.Answers.WriteLine(FormattableString.Invariant($"Metal between the first station and the last: {now / 1000:0.00} cm³ now, {all / 1000:0.00} cm³ in all."));
        }

        terminal.Answers.WriteLine("Order of work (common practice, no source):");
        Numbered(plan.Steps);
        if (plan.Stations.All(station => station.Cut.Walls.Count == 0))
        {
            terminal.Answers.WriteLine("No keep-outs were given (--keep-outs): this plan knows nothing of the walls.");
        }

        terminal.Answers.WriteLine("Cautions:");
        Numbered(CutCautions.All);

        string Length(double lengthMm) => numbers.Length(lengthMm);
        string Area(double areaMm2) => numbers.Area(areaMm2);
        IEnumerable<string> Wall(StationCut cut) => cut.Walls.Count == 0
            ? ["not known", "not known"]
            : [Length(cut.Walls[0].WallMm.Value), FormattableString.Invariant($"{100 * cut.Walls[0].ChanceUnderLimit:0.0} %")];
    }

    private void Numbered(IReadOnlyList<string> lines)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            terminal.Answers.WriteLine(FormattableString.Invariant($"{i + 1}. {lines[i]}"));
        }
    }

    private void Write(IReadOnlyList<IReadOnlyList<string>> rows)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumn(rows[0][0]);
        foreach (var heading in rows[0].Skip(1))
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        foreach (var row in rows.Skip(1))
        {
            table.AddRow([.. row.Select(Markup.Escape)]);
        }

        terminal.WriteTable(table);
    }
}
