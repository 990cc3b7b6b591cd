using System.ComponentModel;
using System.Globalization;
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
            LibrarySource.Use(settings.LibraryPath, TimeProvider.System, library => library.FindSimilar(section.Outline, settings.Count, freedom)));
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
            .AddColumn(new TableColumn("no.").RightAligned()).AddColumn("where").AddColumn(new TableColumn("area mm²").RightAligned());
        foreach (var one in found)
        {
            table.AddRow(
                new Text(FormattableString.Invariant($"{one.Likeness.DistanceMm:0.000} mm{(one.Likeness.IsMirrored ? ", mirrored" : string.Empty)}")),
                new Text(one.Entry.Id.ToString(CultureInfo.InvariantCulture)), new Text(one.Entry.Place.Path),
                new Text(one.Entry.AreaMm2.ToString("0.0", CultureInfo.InvariantCulture)));
        }

        terminal.Answers.Write(table);
        return ExitCode.Done;
    }

    /// <summary>What <c>sectionscan library similar</c> is told.</summary>
    internal sealed class Settings : LibrarySettings
    {
        [CommandArgument(0, "<SECTION>")]
        [Description("A section document, an outline as CSV, or library:NUMBER")]
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

        public override ValidationResult Validate() => Count is >= 1 and <= 100
            ? ValidationResult.Success()
            : ValidationResult.Error($"--count {Count} is out of range: give 1 to 100.");
    }
}
