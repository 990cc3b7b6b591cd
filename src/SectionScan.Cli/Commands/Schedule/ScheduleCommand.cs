using System.Globalization;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Ports;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Schedules;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Schedule;

/// <summary>Shows how the section runs along a port.</summary>
internal sealed class ScheduleCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<ScheduleSettings>
{
    private const double Mm3PerCm3 = 1000;

    public override int Execute(CommandContext context, ScheduleSettings settings, CancellationToken cancellationToken)
    {
        Estimate? burette = settings.Burette is { } filled ? new(filled * Mm3PerCm3, settings.BuretteUncertainty * Mm3PerCm3) : null;
        if (!PortFiles.Read(settings.Port).Then(document => ScheduleStudy.Of(document.Port, settings.Length, burette)).TryGet(out var study, out var problem)
            || !Compare(study, settings).TryGet(out var compared, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var comparisons = compared.Select(each => each.Comparison).ToList();
        var unit = settings.Units.OfLength;
        IReadOnlyList<string> files = [];
        if (settings.Out is not null
            && !ScheduleFiles.Write(study, [.. compared.Select(each => each.Other)], comparisons, settings.Out, unit).TryGet(out files!, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(ScheduleAnswer.Of(study, comparisons));
        }
        else
        {
            Show(study, comparisons, unit);
            foreach (var file in files)
            {
                terminal.Answers.WriteLine(file);
            }
        }

        return ExitCode.Done;
    }

    private static Result<List<(AreaSchedule Other, ScheduleComparison Comparison)>> Compare(ScheduleStudy study, ScheduleSettings settings)
    {
        var compared = new List<(AreaSchedule, ScheduleComparison)>();
        foreach (var path in settings.With)
        {
            var axis = settings.By == "share" ? ScheduleAxis.Share : ScheduleAxis.Distance;
            if (!PortFiles.Read(path).TryGet(out var document, out var problem))
            {
                return problem;
            }

            var other = AreaSchedule.Of(document.Port);
            if (!ScheduleComparison.Of(other, study.Schedule, axis).TryGet(out var comparison, out problem))
            {
                return problem;
            }

            compared.Add((other, comparison));
        }

        return compared;
    }

    private void Show(ScheduleStudy study, IReadOnlyList<ScheduleComparison> comparisons, LengthUnit unit)
    {
        var units = new ShownUnits(unit);
        var table = new Table().Border(TableBorder.Simple);
        terminal.Answers.WriteLine($"Areas in {units.AreaName}, lengths in {units.LengthName}; ± U (k = 2).");
        foreach (var heading in new[] { "station", "distance", "area", "width", "height", "hydraulic diameter", $"to the next, % / {units.Words.Stretch}" })
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        var taper = ScheduleTaper.Intervals(study.Schedule);
        for (var i = 0; i < study.Schedule.Stations.Count; i++)
        {
            var station = study.Schedule.Stations[i];
            table.AddRow(
                Text($"{station.Position.Station}"), units.Distance(new(station.Position.DistanceMm, 0)), units.Area(station.AreaMm2),
                units.Length(station.WidthMm), units.Length(station.HeightMm), units.Length(station.HydraulicDiameterMm),
                i < taper.Count ? Text($"{taper[i].PercentPer10Mm.Value * units.Words.StretchMm / 10:+0.0;-0.0;0.0}") : "");
        }

        terminal.WriteTable(table);
        var volume = study.Volume.VolumeMm3;
        terminal.Answers.WriteLine(Text(
            $"Volume {units.Volume(volume)} {units.VolumeName} from {units.Distance(new(study.Volume.FromMm, 0))} to {units.Distance(new(study.Volume.ToMm, 0))} {units.LengthName} (k = 2)."));
        foreach (var judgement in study.Judgements)
        {
            terminal.Answers.WriteLine($"{judgement.In(units.Words)} ({judgement.Basis})");
        }

        foreach (var each in comparisons)
        {
            terminal.Answers.WriteLine(Text(
                $"Against {each.Reference}: {each.MeanPercent:+0.0;-0.0;0.0} % of area on average, from {each.Smallest.DifferencePercent.Value:+0.0;-0.0;0.0} % at {Place(each, each.Smallest, units)} to {each.Largest.DifferencePercent.Value:+0.0;-0.0;0.0} % at {Place(each, each.Largest, units)}."));
        }
    }

    private static string Place(ScheduleComparison comparison, ScheduleDifference at, ShownUnits units) =>
        comparison.Axis == ScheduleAxis.Share ? Text($"{100 * at.At:0} % of the length") : $"{units.Distance(new(at.At, 0))} {units.LengthName}";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
