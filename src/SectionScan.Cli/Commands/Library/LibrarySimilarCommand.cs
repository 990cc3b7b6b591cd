using System.ComponentModel;
using System.Globalization;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Libraries;
using SectionScan.Metrology.Likeness;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Finds the entries whose shapes are nearest to a section's.</summary>
internal sealed class LibrarySimilarCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibrarySimilarCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var freedom = new LikenessFreedom(settings.AnyScale, settings.Mirrored, settings.Turned);
        var run = SectionInput.Read(settings.Section, settings.LibraryPath, TimeProvider.System).Then(section =>
            LibrarySource.UseExisting(settings.LibraryPath, TimeProvider.System, library => library.FindSimilar(
                section.Outline, settings.Count, freedom, section.EntryId, string.Join(' ', settings.Words), RangeOption.Read(settings.Ranges, settings.Units))));
        if (!run.TryGet(out var found, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new
            {
                Schema = "sectionscan/library-similar/1",
                Entries = found.Select(f => new
                {
                    f.Likeness.DistanceMm,
                    f.Likeness.IsMirrored,
                    f.Likeness.Scale,
                    TurnDeg = f.Likeness.Turn.Degrees,
                    Entry = EntryView.Of(f.Entry),
                }),
            });
            return ExitCode.Done;
        }

        var table = new Table().Border(TableBorder.Simple).AddColumn(new TableColumn("rms distance").RightAligned())
            .AddColumn(new TableColumn("no.").RightAligned()).AddColumn("where").AddColumn(new TableColumn($"area {settings.Units.AreaSymbol}").RightAligned());
        foreach (var one in found)
        {
            table.AddRow(
                new Text(Distance(one.Likeness, settings.Units)),
                new Text(one.Entry.Id.ToString(CultureInfo.InvariantCulture)), new Text(one.Entry.Place.Path),
                new Text(EntryView.Area(one.Entry.AreaMm2, settings.Units)));
        }

        terminal.WriteTable(table);
        return ExitCode.Done;
    }

    private static string Distance(ShapeLikeness likeness, UnitOption units)
    {
        var distance = units.FromMm(likeness.DistanceMm).ToString(units == UnitOption.Inch ? "0.0000" : "0.000", CultureInfo.InvariantCulture);
        return $"{distance} {units.LengthSymbol}{(likeness.IsMirrored ? ", mirrored" : string.Empty)}";
    }

    /// <summary>What <c>sectionscan library similar</c> is told.</summary>
    internal sealed class Settings : ShownLibrarySettings
    {
        [CommandArgument(0, "<SECTION>")]
        [Description("A section document, an outline as DXF, SVG or CSV, or library:NUMBER")]
        public string Section { get; init; } = string.Empty;

        [CommandOption("--count <N>")]
        [Description("How many to show, 1 to 100")]
        [DefaultValue(10)]
        public int Count { get; init; } = 10;

        [CommandOption("--any-scale")]
        [Description("Compare shapes without size")]
        public bool AnyScale { get; init; }

        [CommandOption("--mirrored")]
        [Description("A mirror image counts as alike")]
        public bool Mirrored { get; init; }

        [CommandOption("--turned")]
        [Description("A turned shape counts as alike")]
        public bool Turned { get; init; }

        [CommandOption("--words <WORDS>")]
        [Description("Only entries with these words; may be given several times")]
        public string[] Words { get; init; } = [];

        [CommandOption("--range <NAME=LOW..HIGH>")]
        [Description("Only entries with a number between two others, as in library find; may be given several times")]
        public string[] Ranges { get; init; } = [];

        public override ValidationResult Validate() =>
            Count is < 1 or > 100 ? ValidationResult.Error($"--count {Count} is out of range: give 1 to 100.")
            : RangeOption.Fault(Ranges) is { } fault ? ValidationResult.Error(fault)
            : ValidationResult.Success();
    }
}
