using System.ComponentModel;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Shows one entry, as it is or as it was.</summary>
internal sealed class LibraryShowCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryShowCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var shown = LibrarySource.UseExisting(settings.LibraryPath, TimeProvider.System, library => library.Find(settings.Entry).Then(library.Show));
        if (!shown.TryGet(out var entry, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (!EntryRevisions.Find(entry, settings.Revision).TryGet(out var revision, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new
            {
                Schema = "sectionscan/library-entry/1",
                Entry = EntryView.Of(entry.Summary),
                Revision = EntryView.Of(revision),
                History = entry.History.Select(r => new { r.Number, r.Action, r.Reason, r.At }),
                Document = System.Text.Json.JsonDocument.Parse(revision.Content.DocumentJson).RootElement,
            });
            return ExitCode.Done;
        }

        if (!entry.SummaryAt(revision).TryGet(out var summary, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        EntryView.Show(terminal, [summary], settings.Units);

        if (revision.Content.Notes.Length > 0)
        {
            terminal.Answers.WriteLine(revision.Content.Notes);
        }

        foreach (var field in revision.Content.Fields)
        {
            terminal.Answers.WriteLine(FormattableString.Invariant($"{field.Name}: {field.Value} {field.Unit}").TrimEnd());
        }

        terminal.Answers.WriteLine(FormattableString.Invariant(
            $"revision {revision.Number} of {entry.History.Count}, {revision.At:yyyy-MM-dd HH:mm}: {HistoryWords.Line(revision)}"));
        return ExitCode.Done;
    }

    /// <summary>What <c>sectionscan library show</c> is told.</summary>
    internal sealed class Settings : LibraryEntrySettings
    {
        [CommandOption("--revision <N>")]
        [Description("As it was at this revision")]
        public int? Revision { get; init; }

        [CommandOption("--units <UNITS>")]
        [Description("mm or in: what is shown")]
        public UnitOption Units { get; init; }
    }
}
