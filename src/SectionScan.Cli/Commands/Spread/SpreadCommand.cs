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
        var library = LibraryOption.PathOf(settings.Library);
        var ports = new List<(string, IReadOnlyList<SectionInput>)>();
        foreach (var (name, text) in settings.Ports.Select(Settings.Named))
        {
            if (!SectionFiles.Read(text, library, TimeProvider.System).TryGet(out var sections, out var unusable))
            {
                problems.Print(unusable);
                return ExitCode.UnusableInput;
            }

            ports.Add((name, sections));
        }

        if (!StationSpread.OfPorts(ports, settings.Alignment).TryGet(out var stations, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/spread/1", Align = settings.AlignWord, Stations = stations.Select(Answer) });
        }
        else
        {
            Show(stations, settings.Units == UnitOption.Inch ? LengthUnit.Inch : LengthUnit.Millimetre);
        }

        return ExitCode.Done;
    }

    private static object Answer(StationSpread station)
    {
        var widest = station.Spread.Widest;
        return new
        {
            station.Station,
            Ports = station.Sections.Select(each => each.Port),
            Area = Range(station, MeasureCatalogue.Area),
            Width = Range(station, MeasureCatalogue.Width),
            Height = Range(station, MeasureCatalogue.Height),
            MeanRangeMm = station.Spread.MeanRangeMm,
            RangeExpandedUncertaintyMm = double.IsNaN(station.RangeStandardUncertaintyMm) ? (double?)null : Estimate.CoverageFactor * station.RangeStandardUncertaintyMm,
            Widest = new
            {
                widest.RangeMm,
                DirectionDeg = widest.Direction.Degrees,
                Region = RegionWords.Of(widest.Region),
                Outermost = station.Sections[widest.Outermost].Port,
                Innermost = station.Sections[widest.Innermost].Port,
            },
            Regions = station.Regions.Select(each => new { Region = RegionWords.Of(each.Region), each.MeanMm, each.MostMm }),
        };
    }

    private static object Range(StationSpread station, Measure measure)
    {
        var (least, leastPort, greatest, greatestPort) = station.Of(measure);
        return new { Least = least, LeastPort = leastPort, Greatest = greatest, GreatestPort = greatestPort, Range = greatest - least };
    }

    private void Show(IReadOnlyList<StationSpread> stations, LengthUnit unit)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumn("station");
        foreach (var heading in new[] { "areas", "apart", "walls apart, mean", "most", "where", "outermost, innermost" })
        {
            table.AddColumn(heading);
        }

        foreach (var station in stations)
        {
            var (least, _, greatest, _) = station.Of(MeasureCatalogue.Area);
            var widest = station.Spread.Widest;
            var u = double.IsNaN(station.RangeStandardUncertaintyMm) ? 0 : station.RangeStandardUncertaintyMm;
            table.AddRow(
                station.Station?.ToString(CultureInfo.InvariantCulture) ?? "-",
                $"{MeasureText.Area(new(least, 0), unit).Split(' ')[0]} to {MeasureText.Area(new(greatest, 0), unit)}",
                FormattableString.Invariant($"{100 * (greatest - least) / greatest:0.0} %"),
                MeasureText.Length(new(station.Spread.MeanRangeMm, 0), unit),
                MeasureText.Length(new(widest.RangeMm, u), unit),
                FormattableString.Invariant($"{RegionWords.Of(widest.Region)} ({widest.Direction.Degrees:0}°)"),
                $"{station.Sections[widest.Outermost].Port}, {station.Sections[widest.Innermost].Port}".EscapeMarkup());
        }

        terminal.Answers.Write(table);
    }

    /// <summary>What <c>sectionscan spread</c> is told.</summary>
    internal sealed class Settings : AlignmentSettings
    {
        [CommandArgument(0, "<PORT>")]
        [Description("Two or more ports: folders of section documents, or single sections; NAME=FOLDER gives one a name")]
        public string[] Ports { get; init; } = [];

        /// <summary>A port's name and where its sections are.</summary>
        public static (string Name, string Text) Named(string port)
        {
            var at = port.IndexOf('=', StringComparison.Ordinal);
            return at > 0 ? (port[..at], port[(at + 1)..]) : (Path.GetFileName(Path.TrimEndingDirectorySeparator(port)), port);
        }

        public override ValidationResult Validate()
        {
            var shared = base.Validate();
            return !shared.Successful ? shared
                : Ports.Length < 2 ? ValidationResult.Error("Name two ports or more.")
                : Ports.Select(Named).GroupBy(port => port.Name).FirstOrDefault(group => group.Count() > 1) is { } twice
                    ? ValidationResult.Error($"Two ports are called {twice.Key}: give names, for example one={twice.First().Text}.")
                : ValidationResult.Success();
        }
    }
}
