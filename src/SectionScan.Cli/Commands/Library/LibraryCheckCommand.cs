using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Checks that the library is sound. An unsound one is an input that cannot be used.</summary>
internal sealed class LibraryCheckCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibrarySettings>
{
    public override int Execute(CommandContext context, LibrarySettings settings, CancellationToken cancellationToken)
    {
        var done = LibrarySource.UseExisting(settings.LibraryPath, TimeProvider.System, library => library.CheckIntegrity());
        if (!done.TryGet(out var report, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/library-check/1", Report = report });
        }
        else
        {
            terminal.Answers.WriteLine(FormattableString.Invariant(
                $"{report.EntryCount} entries, {report.RevisionCount} revisions, {report.DocumentCount} documents: {(report.IsSound ? "sound" : "not sound")}"));
        }

        if (!report.IsSound)
        {
            problems.Print(LibraryUseProblems.NotSound(settings.LibraryPath, report.Findings));
        }

        return report.IsSound ? ExitCode.Done : ExitCode.UnusableInput;
    }
}
