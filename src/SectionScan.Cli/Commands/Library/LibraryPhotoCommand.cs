using System.ComponentModel;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Keeps the original photo of an entry in the library, or writes it out again.</summary>
internal sealed class LibraryPhotoCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryPhotoCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var done = LibrarySource.UseExisting(settings.LibraryPath, TimeProvider.System, library => library.Find(settings.Entry).Then(id =>
            settings.Keep is { } photo ? PhotoKeeping.Keep(library, id, photo) : PhotoKeeping.WriteOut(library, id, settings.Out!)));
        if (!done.TryGet(out var answer, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new
            {
                Schema = "sectionscan/library-photo/1",
                File = settings.Keep ?? answer,
                Sha256 = settings.Keep is null ? null : answer,
            });
        }
        else
        {
            terminal.Answers.WriteLine(settings.Keep is null ? answer : $"{settings.Keep} is kept in the library.");
        }

        return ExitCode.Done;
    }

    /// <summary>What <c>sectionscan library photo</c> is told.</summary>
    internal sealed class Settings : LibraryEntrySettings
    {
        [CommandOption("--keep <PHOTO>")]
        [Description("The photo that was digitised, unchanged")]
        public string? Keep { get; init; }

        [CommandOption("--out <DIR>")]
        [Description("Folder to write the kept photo to")]
        public string? Out { get; init; }

        public override ValidationResult Validate() => (Keep is null) == (Out is null)
            ? ValidationResult.Error("Give --keep PHOTO to keep a photo, or --out DIR to write the kept one.")
            : ValidationResult.Success();
    }
}
