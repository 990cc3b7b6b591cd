using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Takes the mark of removal away again.</summary>
internal sealed class LibraryRestoreCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryRemoveCommand.Settings>
{
    public override int Execute(CommandContext context, LibraryRemoveCommand.Settings settings, CancellationToken cancellationToken)
    {
        var restored = LibrarySource.UseExisting(
            settings.LibraryPath, TimeProvider.System, library => library.Find(settings.Entry).Then(id => library.Restore(id, settings.Reason)));
        if (!restored.TryGet(out var entry, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/library-restore/1", Entry = EntryView.Of(entry) });
        }
        else
        {
            terminal.Answers.WriteLine($"{entry.Place.Path} is no longer marked as removed.");
        }

        return ExitCode.Done;
    }
}
