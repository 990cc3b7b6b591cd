using System.ComponentModel;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Writes a copy of the whole library to a new file.</summary>
internal sealed class LibraryBackupCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryBackupCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var done = LibrarySource.UseExisting<long>(settings.LibraryPath, TimeProvider.System, library => library.Backup(settings.File));
        if (!done.TryGet(out var bytes, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/library-backup/1", Report = new { settings.File, Bytes = bytes } });
        }
        else
        {
            terminal.Answers.WriteLine(FormattableString.Invariant($"{bytes} bytes written to {settings.File}"));
        }

        return ExitCode.Done;
    }

    /// <summary>What <c>sectionscan library backup</c> is told.</summary>
    internal sealed class Settings : LibrarySettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("The new file; nothing may be there yet")]
        public string File { get; init; } = string.Empty;
    }
}
