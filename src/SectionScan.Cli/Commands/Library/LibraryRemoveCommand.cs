using System.ComponentModel;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Marks an entry as removed; its history stays.</summary>
internal sealed class LibraryRemoveCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryRemoveCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var removed = LibrarySource.UseExisting(
            settings.LibraryPath, TimeProvider.System, library => library.Find(settings.Entry).Then(id => library.Remove(id, settings.Reason)));
        if (!removed.TryGet(out var entry, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/library-remove/1", Entry = EntryView.Of(entry) });
        }
        else
        {
            terminal.Answers.WriteLine($"{entry.Place.Path} is marked as removed; its history is kept.");
        }

        return ExitCode.Done;
    }

    /// <summary>What <c>sectionscan library remove</c> is told.</summary>
    internal sealed class Settings : LibraryEntrySettings
    {
        [CommandOption("--reason <TEXT>", isRequired: true)]
        [Description("Why; kept in the history")]
        public string Reason { get; init; } = string.Empty;
    }
}
