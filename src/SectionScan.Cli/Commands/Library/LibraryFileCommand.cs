using System.ComponentModel;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Keeps the library safe and passes it on: check, backup, export, import.</summary>
internal sealed class LibraryFileCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryFileCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var done = LibrarySource.Use<(string Words, object Report)>(settings.LibraryPath, TimeProvider.System, library => context.Name switch
        {
            "check" => library.CheckIntegrity().Then<(string, object)>(r => (
                FormattableString.Invariant($"{r.EntryCount} entries, {r.RevisionCount} revisions: {(r.IsSound ? "sound" : string.Join("; ", r.Findings))}"), r)),
            "backup" => library.Backup(settings.File).Then<(string, object)>(bytes => (
                FormattableString.Invariant($"{bytes} bytes written to {settings.File}"), new { settings.File, Bytes = bytes })),
            "export" => library.List().Then(entries => library.Export(settings.File, [.. entries.Select(e => e.Id)])).Then<(string, object)>(r => (
                FormattableString.Invariant($"{r.EntryCount} entries written to {settings.File}"), r)),
            _ => library.Import(settings.File, settings.SkipsTaken).Then<(string, object)>(r => (
                FormattableString.Invariant($"{r.Added} entries added, {r.AlreadyThere} were there already, {r.Skipped} skipped"), r)),
        });
        if (!done.TryGet(out var answer, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema = $"sectionscan/library-{context.Name}/1", answer.Report });
        }
        else
        {
            terminal.Answers.WriteLine(answer.Words);
        }

        return ExitCode.Done;
    }

    /// <summary>What the commands on whole files are told.</summary>
    internal sealed class Settings : LibrarySettings
    {
        [CommandArgument(0, "[FILE]")]
        [Description("The file to write (backup, export) or to read (import)")]
        public string File { get; init; } = string.Empty;

        [CommandOption("--skip-taken")]
        [Description("import: leave out entries whose place another entry has taken")]
        public bool SkipsTaken { get; init; }
    }
}
