using System.Globalization;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Shows every revision of an entry: when, why, and what it changed.</summary>
internal sealed class LibraryHistoryCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryEntrySettings>
{
    public override int Execute(CommandContext context, LibraryEntrySettings settings, CancellationToken cancellationToken)
    {
        var shown = LibrarySource.UseExisting(settings.LibraryPath, TimeProvider.System, library => library.Find(settings.Entry).Then(library.Show));
        if (!shown.TryGet(out var entry, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new
            {
                Schema = "sectionscan/library-history/1",
                Entry = EntryView.Of(entry.Summary),
                Revisions = entry.History.Select(EntryView.Of),
            });
            return ExitCode.Done;
        }

        terminal.Answers.WriteLine(entry.Summary.Place.Path + (entry.Summary.IsRemoved ? " (removed)" : string.Empty));
        for (var i = 0; i < entry.History.Count; i++)
        {
            var revision = entry.History[i];
            Line($"revision {revision.Number}, {revision.At:yyyy-MM-dd HH:mm} UTC: {HistoryWords.Line(revision)}");
            foreach (var change in HistoryWords.Changes(i == 0 ? null : entry.History[i - 1], revision))
            {
                Line($"    {change}");
            }
        }

        return ExitCode.Done;
    }

    // Past the library, which folds long lines at its width.
    private void Line(FormattableString text) =>
        terminal.Answers.Profile.Out.Writer.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
