using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Lists the library's entries.</summary>
internal sealed class LibraryListCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<EntryChoiceSettings>
{
    public override int Execute(CommandContext context, EntryChoiceSettings settings, CancellationToken cancellationToken)
    {
        var listed = settings.Filter().Then(filter => LibrarySource.UseExisting(settings.LibraryPath, TimeProvider.System, library => library.List(filter)));
        if (!listed.TryGet(out var entries, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/library-list/1", Entries = entries.Select(EntryView.Of) });
        }
        else
        {
            EntryView.Show(terminal, entries, settings.Units);
        }

        return ExitCode.Done;
    }
}
