using System.ComponentModel;
using System.Globalization;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Archive.Search;
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
        var run = LibrarySource.Use(settings.LibraryPath, TimeProvider.System, library => Find(library, settings));
        if (!run.TryGet(out var found, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/library-find/1", Entries = found.Select(EntryView.Of) });
        }
        else
        {
            EntryView.Show(terminal, found);
        }

        return ExitCode.Done;
    }

    private static Result<IReadOnlyList<EntrySummary>> Find(SectionLibrary library, Settings settings)
    {
        NumberRange[] ranges = [.. settings.Ranges.Select(text => Settings.RangeOf(text)!)];
        if (settings.Words.Length == 0)
        {
            return library.FindByNumbers(ranges);
        }

        return library.FindByWords(string.Join(' ', settings.Words)).Then(byWords => ranges.Length == 0
            ? library.FindByWords(string.Join(' ', settings.Words))
            : library.FindByNumbers(ranges).Then<IReadOnlyList<EntrySummary>>(byNumbers =>
                byWords.Where(w => byNumbers.Any(n => n.Id == w.Id)).ToArray()));
    }

    /// <summary>What <c>sectionscan library find</c> is told.</summary>
    internal sealed class Settings : LibrarySettings
    {
        [CommandArgument(0, "[WORDS]")]
        [Description("Words or beginnings of words in head, port, notes, tags and fields")]
        public string[] Words { get; init; } = [];

        [CommandOption("--range <NAME=LOW..HIGH>")]
        [Description("area, width, height, station or a field between two numbers, such as area=900..1100; may be given several times")]
        public string[] Ranges { get; init; } = [];

        /// <summary>Reads a range.</summary>
        public static NumberRange? RangeOf(string text)
        {
            var parts = text.Split('=', 2);
            var ends = parts.Length == 2 ? parts[1].Split("..", 2) : [];
            return ends.Length == 2
                && double.TryParse(ends[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var low)
                && double.TryParse(ends[1], NumberStyles.Float, CultureInfo.InvariantCulture, out var high)
                && low <= high
                ? new(parts[0], low, high)
                : null;
        }

        public override ValidationResult Validate()
        {
            if (Words.Length == 0 && Ranges.Length == 0)
            {
                return ValidationResult.Error("There is nothing to look for: give words, or a range such as --range area=900..1100.");
            }

            return Ranges.FirstOrDefault(r => RangeOf(r) is null) is { } bad
                ? ValidationResult.Error($"--range {bad} is not a range: give, for example, --range area=900..1100.")
                : ValidationResult.Success();
        }
    }
}
