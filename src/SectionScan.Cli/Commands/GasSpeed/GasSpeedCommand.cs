using System.Globalization;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Ports;
using SectionScan.Porting.Documents;
using SectionScan.Porting.GasSpeeds;
using SectionScan.Porting.Schedules;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.GasSpeed;

/// <summary>Shows the gas speeds in a port.</summary>
internal sealed class GasSpeedCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<GasSpeedSettings>
{
    public override int Execute(CommandContext context, GasSpeedSettings settings, CancellationToken cancellationToken)
    {
        if (settings.ShowsFormulas)
        {
            ShowFormulas(settings);
            return ExitCode.Done;
        }

        JobFlow[] flow = settings.Flow is { } cfm ? [new(cfm, settings.TestPressure!.Value) { LiftMm = settings.Lift }] : [];
        var studied = PortFiles.Read(settings.Port!).Then(document => GasSpeedStudy.Of(
            AreaSchedule.Of(document.Port), document.Port, settings.Engine, settings.ValveData, settings.FlowCoefficient, flow, "gas-speed"));
        if (!studied.TryGet(out var study, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var unit = settings.Units.OfLength;
        IReadOnlyList<string> files = [];
        if (settings.Out is not null && !study.Write(settings.Out, unit).TryGet(out files!, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(GasSpeedAnswer.Of(study));
        }
        else
        {
            Show(study, new ShownUnits(unit));
            foreach (var file in files)
            {
                terminal.Answers.WriteLine(file);
            }
        }

        return ExitCode.Done;
    }

    private void Show(GasSpeedStudy study, ShownUnits units)
    {
        terminal.Answers.WriteLine($"Mean gas speed in {units.SpeedName} at each engine speed (1/min), while the cylinder draws:");
        var table = new Table().Border(TableBorder.Simple).AddColumn(new TableColumn("station").RightAligned()).AddColumn(new TableColumn($"area, {units.AreaName}").RightAligned());
        foreach (var rpm in study.Speeds.Rpms)
        {
            table.AddColumn(new TableColumn(Text($"{rpm:0}")).RightAligned());
        }

        foreach (var station in study.Speeds.Stations)
        {
            table.AddRow([Text($"{station.Station}"), units.Area(station.AreaMm2), .. station.SpeedsMPerS.Select(speed => units.Speed(speed.Value))]);
        }

        table.AddRow(["piston", "", .. study.Speeds.Rpms.Select(rpm => units.Speed(PistonMotion.MeanSpeedMPerS(study.Engine.StrokeMm, rpm)))]);
        terminal.WriteTable(table);
        foreach (var flow in study.Flow)
        {
            terminal.Answers.WriteLine(Text(
                $"On the bench, {flow.FlowCfm:0.#} cfm at {flow.TestPressureInH2O:0.#} inH2O: {units.Speed(FlowBench.MeanMPerS(flow.FlowCfm, study.Speeds.Fastest.AreaMm2.Value))} {units.SpeedName} at the least section, {units.Speed(FlowBench.IdealMPerS(flow.TestPressureInH2O))} {units.SpeedName} ideal."));
        }

        foreach (var judgement in study.Judgements)
        {
            terminal.Answers.WriteLine($"{judgement.In(units.Words)} ({judgement.Basis})");
        }
    }

    private void ShowFormulas(GasSpeedSettings settings)
    {
        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/gas-speed-formulas/1", Formulas = WorkedFormulas.All });
            return;
        }

        foreach (var each in WorkedFormulas.All)
        {
            terminal.Answers.WriteLine(Text($"{each.Quantity}: {each.Formula}"));
            terminal.Answers.WriteLine(Text($"    source: {each.Source}"));
            terminal.Answers.WriteLine(Text($"    example: {each.Example}: by hand {each.Expected:G8} {each.Unit}, here {each.Computed:G8}").TrimEnd());
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
