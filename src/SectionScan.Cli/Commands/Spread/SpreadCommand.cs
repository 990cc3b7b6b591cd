using System.ComponentModel;
using System.Globalization;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Comparing;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Spread;

/// <summary>Compares many ports with each other, station by station.</summary>
internal sealed class SpreadCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<SpreadCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (!NamedSections.Read(settings.Ports, settings.Library).TryGet(out var ports, out var problem)
            || !StationSpread.OfPorts(ports, settings.Alignment).TryGet(out var stations, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var answer = SpreadAnswer.Of(stations, settings.AlignWord);
        var unit = settings.Units.OfLength;
        IReadOnlyList<string> files = [];
        if (settings.Out is not null && !SpreadFiles.Write(stations, settings.Alignment, answer, unit, settings.Out).TryGet(out files!, out problem))
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
            Show(stations, unit);
            foreach (var file in files)
            {
                terminal.Answers.WriteLine(file);
            }
        }

        return ExitCode.Done;
    }

    private void Show(IReadOnlyList<StationSpread> stations, LengthUnit unit)
    {
        var numbers = new ShownUnits(unit);
        terminal.Answers.WriteLine($"Areas in {numbers.AreaName}, lengths in {numbers.LengthName}; ± U (k = 2).");
        var table = new Table().Border(TableBorder.Simple).AddColumn("station");
        foreach (var heading in new[] { "areas", "apart, of the largest", "walls apart, mean", "most" })
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        table.AddColumn("where");
        foreach (var station in stations)
        {
            var (least, _, greatest, _) = station.Of(MeasureCatalogue.Area);
            var widest = station.Spread.Widest;
            table.AddRow(
                station.Station?.ToString(CultureInfo.InvariantCulture) ?? "-",
                $"{numbers.Area(least)} to {numbers.Area(greatest)}",
                FormattableString.Invariant($"{100 * (greatest - least) / greatest:0.0} %"),
                numbers.Length(station.Spread.MeanRangeMm),
                double.IsNaN(station.RangeStandardUncertaintyMm)
                    ? numbers.Length(widest.RangeMm) : $"{numbers.Length(widest.RangeMm)} ± {numbers.Length(Estimate.CoverageFactor * station.RangeStandardUncertaintyMm)}",
                RegionWords.Of(widest.Region));
        }

        terminal.WriteTable(table);
        foreach (var station in stations)
        {
            var widest = station.Spread.Widest;
            terminal.Answers.WriteLine(FormattableString.Invariant(
                $"{SpreadFiles.StationName(station.Station)}: {station.Sections[widest.Outermost].Port} outermost, {station.Sections[widest.Innermost].Port} innermost, at {widest.Direction.Degrees:0}°"));
        }
    }

    /// <summary>What <c>sectionscan spread</c> is told.</summary>
    internal sealed class Settings : AlignmentSettings
    {
        [CommandArgument(0, "<PORT>")]
        [Description("Two or more ports: folders of section documents, or single sections; NAME=FOLDER gives one a name")]
        public string[] Ports { get; init; } = [];

        public override ValidationResult Validate()
        {
            var shared = base.Validate();
            return !shared.Successful ? shared
                : Ports.Length < 2 ? ValidationResult.Error("Name two ports or more.")
                : Ports.Select(NamedSections.Named).GroupBy(port => port.Name).FirstOrDefault(group => group.Count() > 1) is { } twice
                    ? ValidationResult.Error($"Two ports are called {twice.Key}: give names, for example one={twice.First().Text}.")
                : ValidationResult.Success();
        }
    }
}
