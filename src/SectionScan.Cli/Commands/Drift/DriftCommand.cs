using System.ComponentModel;
using System.Globalization;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Comparing;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Drift;

/// <summary>Follows a port over the stages of the job.</summary>
internal sealed class DriftCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<DriftCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (!NamedSections.Read(settings.Stages, settings.Library).TryGet(out var stages, out var problem)
            || !StageDrift.OfStages(stages, settings.Alignment).TryGet(out var drifts, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var answer = DriftAnswer.Of(drifts, settings.AlignWord);
        var unit = settings.Units.OfLength;
        IReadOnlyList<string> files = [];
        if (settings.Out is not null && !DriftFiles.Write(drifts, settings.Alignment, answer, unit, settings.Out).TryGet(out files!, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(answer);
        }
        else
        {
            Show(drifts, unit);
            foreach (var file in files)
            {
                terminal.Answers.WriteLine(file);
            }
        }

        return ExitCode.Done;
    }

    private void Show(IReadOnlyList<StageDrift> drifts, LengthUnit unit)
    {
        var numbers = new ShownUnits(unit);
        terminal.Answers.WriteLine($"Areas in {numbers.AreaName}, lengths in {numbers.LengthName}, + outward; metal gone in mm³ for each mm of port.");
        var table = new Table().Border(TableBorder.Simple).AddColumn(new TableColumn("station").RightAligned()).AddColumn("stage");
        foreach (var heading in new[] { "area", "wall moved, mean", "most", "since the last stage", "metal gone" })
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        foreach (var drift in drifts)
        {
            var station = drift.Station?.ToString(CultureInfo.InvariantCulture) ?? "-";
            var (firstMm2, _) = drift.Stages[0].FromFirst.AreasMm2;
            table.AddRow(station, drift.First.Stage.EscapeMarkup(), numbers.Area(firstMm2), string.Empty, string.Empty, string.Empty, string.Empty);
            foreach (var (stage, fromFirst, fromLast) in drift.Stages)
            {
                table.AddRow(
                    station, stage.EscapeMarkup(), numbers.Area(fromFirst.AreasMm2.MeasuredMm2),
                    numbers.Deviation(fromFirst.Result.MeanDeviationMm),
                    numbers.Deviation(fromFirst.Result.Highest.DeviationMm),
                    numbers.Deviation(fromLast.Result.MeanDeviationMm),
                    FormattableString.Invariant($"{fromFirst.Result.Regions.Sum(region => region.GoneMm3PerMm):0.0}"));
            }
        }

        terminal.WriteTable(table);
        foreach (var (drift, stage) in drifts.SelectMany(drift => drift.Stages.Select(stage => (drift, stage))))
        {
            // Metal does not grow: a wall farther in than before by more than its uncertainty is a slice of another place.
            var lowest = stage.FromLast.Result.Lowest;
            if (-lowest.DeviationMm > stage.FromLast.DeviationExpandedUncertaintyMm)
            {
                terminal.Answers.WriteLine(FormattableString.Invariant(
                    $"station {drift.Station}, {stage.Stage}: at the {Metrology.Comparison.RegionWords.Of(lowest.Region)} ({lowest.Direction.Degrees:0}°) the wall lies {MeasureText.Deviation(lowest.DeviationMm, unit)} against the stage before; metal does not grow, so check station and alignment."));
            }
        }
    }

    /// <summary>What <c>sectionscan drift</c> is told.</summary>
    internal sealed class Settings : AlignmentSettings
    {
        [CommandArgument(0, "<STAGE>")]
        [Description("The stages in order, two or more: folders of section documents, or single sections; NAME=FOLDER gives one a name")]
        public string[] Stages { get; init; } = [];

        public override ValidationResult Validate()
        {
            var shared = base.Validate();
            return !shared.Successful ? shared
                : Stages.Length < 2 ? ValidationResult.Error("Name two stages or more, in order.")
                : ValidationResult.Success();
        }
    }
}
