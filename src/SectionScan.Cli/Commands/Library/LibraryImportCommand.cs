using System.ComponentModel;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Adds the entries of an archive file with their history, and newer revisions of known ones: all, or none when something is
/// wrong.</summary>
internal sealed class LibraryImportCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryImportCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var done = LibrarySource.Use(settings.LibraryPath, TimeProvider.System, library => library.Import(settings.File, settings.SkipsTaken));
        if (!done.TryGet(out var report, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new
            {
                Schema = "sectionscan/library-import/1",
                Report = new
                {
                    report.Added,
                    report.Updated,
                    AlreadyThere = report.AlreadyThere.Select(place => place.Path),
                    Skipped = report.Skipped.Select(place => place.Path),
                },
            });
            return ExitCode.Done;
        }

        terminal.Answers.WriteLine(FormattableString.Invariant(
            $"{report.Added.Count} entries added, {report.Updated.Count} updated, {report.AlreadyThere.Count} were there already, {report.Skipped.Count} skipped"));
        foreach (var place in report.Skipped)
        {
            terminal.Answers.WriteLine($"skipped, another entry is there, or it was changed here too: {place.Path}");
        }

        return ExitCode.Done;
    }

    /// <summary>What <c>sectionscan library import</c> is told.</summary>
    internal sealed class Settings : LibrarySettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("The archive file; it is not trusted, and nothing of it is written anywhere but into the library")]
        public string File { get; init; } = string.Empty;

        [CommandOption("--skip-taken")]
        [Description("Leave out entries whose place another entry has taken, or that were changed here too, instead of refusing all")]
        public bool SkipsTaken { get; init; }
    }
}
