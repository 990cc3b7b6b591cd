using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Shows one entry with its history.</summary>
internal sealed class LibraryShowCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryEntrySettings>
{
    public override int Execute(CommandContext context, LibraryEntrySettings settings, CancellationToken cancellationToken)
    {
        var shown = LibrarySource.Use(settings.LibraryPath, TimeProvider.System, library => library.Find(settings.Entry).Then(library.Show));
        if (!shown.TryGet(out var entry, out var problem))
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
                History = entry.History.Select(r => new { r.Number, r.Action, r.Reason, r.At }),
                Document = System.Text.Json.JsonDocument.Parse(entry.Current.Content.DocumentJson).RootElement,
            });
            return ExitCode.Done;
        }

        EntryView.Show(terminal, [entry.Summary]);
        if (entry.Summary.Notes.Length > 0)
        {
            terminal.Answers.WriteLine(entry.Summary.Notes);
        }

        foreach (var field in entry.Summary.Fields)
        {
            terminal.Answers.WriteLine(FormattableString.Invariant($"{field.Name}: {field.Value} {field.Unit}").TrimEnd());
        }

        foreach (var revision in entry.History)
        {
            terminal.Answers.WriteLine(FormattableString.Invariant(
                $"revision {revision.Number}, {revision.At:yyyy-MM-dd HH:mm}: {revision.Action} {revision.Reason}").TrimEnd());
        }

        return ExitCode.Done;
    }
}
