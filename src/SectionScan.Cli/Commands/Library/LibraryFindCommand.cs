using System.ComponentModel;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using SectionScan.Metrology.Results;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Finds entries by words and by ranges of numbers.</summary>
internal sealed class LibraryFindCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryFindCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var run = LibrarySource.UseExisting(settings.LibraryPath, TimeProvider.System, library => Find(library, settings));
        if (!run.TryGet(out var found, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var shown = found.Take(settings.Count ?? int.MaxValue);
        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/library-find/1", Found = found.Count, Entries = shown.Select(EntryView.Of) });
            return ExitCode.Done;
        }

        EntryView.Show(terminal, shown, settings.Units);
        if (found.Count > settings.Count)
        {
            terminal.Answers.WriteLine(FormattableString.Invariant($"{found.Count} were found; the first {settings.Count} are shown."));
        }

        return ExitCode.Done;
    }

    private static Result<IReadOnlyList<EntrySummary>> Find(SectionLibrary library, Settings settings)
    {
        var ranges = RangeOption.Read(settings.Ranges, settings.Units);
        return settings.Words.Length == 0
            ? library.FindByNumbers(ranges, settings.Removed)
            : library.FindByWords(string.Join(' ', settings.Words), int.MaxValue, settings.Removed, ranges);
    }

    /// <summary>What <c>sectionscan library find</c> is told.</summary>
    internal sealed class Settings : ShownLibrarySettings
    {
        [CommandArgument(0, "[WORDS]")]
        [Description("Words or beginnings of words in head, port, notes, tags and fields")]
        public string[] Words { get; init; } = [];

        [CommandOption("--range <NAME=LOW..HIGH>")]
        [Description("area, width, height, station or a field between two numbers, with a unit if wanted: area=900..1100, \"valve diameter=1.25..1.35 in\", station=3..; may be given several times")]
        public string[] Ranges { get; init; } = [];

        [CommandOption("--count <N>")]
        [Description("How many to show at most, the best first; else all")]
        public int? Count { get; init; }

        [CommandOption("--removed")]
        [Description("Also entries marked as removed")]
        public bool Removed { get; init; }

        public override ValidationResult Validate() =>
            Words.Length == 0 && Ranges.Length == 0
                ? ValidationResult.Error("There is nothing to look for: give words, or a range such as --range area=900..1100.")
            : Count < 1
                ? ValidationResult.Error($"--count {Count} is out of range: give 1 or more.")
            : RangeOption.Fault(Ranges) is { } fault ? ValidationResult.Error(fault)
            : ValidationResult.Success();
    }
}
