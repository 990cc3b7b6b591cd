using System.ComponentModel;
using SectionScan.Archive.Entries;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Libraries;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Corrects an entry: a new revision with its reason, the earlier ones stay.</summary>
internal sealed class LibraryCorrectCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryCorrectCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var corrected = Correction(settings).Then(correction => LibrarySource.UseExisting(
            settings.LibraryPath, TimeProvider.System, library => library.Find(settings.Entry).Then(id => correction.Apply(library, id, settings.Reason))));
        if (!corrected.TryGet(out var entry, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/library-correct/1", Entry = EntryView.Of(entry) });
        }
        else
        {
            terminal.Answers.WriteLine(FormattableString.Invariant(
                $"{entry.Place.Path} is at revision {entry.RevisionNumber} now; the earlier ones are kept."));
        }

        return ExitCode.Done;
    }

    private static Result<EntryCorrection> Correction(Settings settings)
    {
        var plain = new EntryCorrection(
            settings.Head, null, settings.Station, settings.Stage, null, settings.Note, settings.Tags, settings.DroppedTags,
            [.. settings.Fields.Select(FieldOption.Read)], settings.DroppedFields, settings.BackTo);
        var withPort = settings.Port is null ? plain : PortName.Parse(settings.Port).Then<EntryCorrection>(port => plain with { Port = port });
        return settings.Document is not { } path
            ? withPort
            : withPort.Then(correction => TextFile.Read(path, SectionDocumentFormat.MaximumBytes).Then(text =>
                SectionDocumentFormat.Read(text, path).Then<EntryCorrection>(_ => correction with { DocumentJson = text })));
    }

    /// <summary>What <c>sectionscan library correct</c> is told.</summary>
    internal sealed class Settings : LibraryEntrySettings
    {
        [CommandOption("--reason <TEXT>", isRequired: true)]
        [Description("Why; kept in the history")]
        public string Reason { get; init; } = string.Empty;

        [CommandOption("--document <FILE>")]
        [Description("Another section document for the same place")]
        public string? Document { get; init; }

        [CommandOption("--back-to <REVISION>")]
        [Description("Bring back what this revision held; the history goes on from there")]
        public int? BackTo { get; init; }

        [CommandOption("--head <NAME>")]
        [Description("Another cylinder head")]
        public string? Head { get; init; }

        [CommandOption("--port <PORT>")]
        [Description("Another port, such as \"intake 1\"")]
        public string? Port { get; init; }

        [CommandOption("--station <N>")]
        [Description("Another station")]
        public int? Station { get; init; }

        [CommandOption("--stage <STAGE>")]
        [Description("Another stage of the work")]
        public string? Stage { get; init; }

        [CommandOption("--note <TEXT>")]
        [Description("Another note in place of the one there")]
        public string? Note { get; init; }

        [CommandOption("--tag <TAG>")]
        [Description("A tag to add; may be given several times")]
        public string[] Tags { get; init; } = [];

        [CommandOption("--drop-tag <TAG>")]
        [Description("A tag to take away; may be given several times")]
        public string[] DroppedTags { get; init; } = [];

        [CommandOption("--field <NAME=VALUE>")]
        [Description("A number to add or to put in place of the one of that name; may be given several times")]
        public string[] Fields { get; init; } = [];

        [CommandOption("--drop-field <NAME>")]
        [Description("The name of a number to take away; may be given several times")]
        public string[] DroppedFields { get; init; } = [];

        public override ValidationResult Validate() => FieldOption.Fault("--field", Fields) is { } fault
            ? ValidationResult.Error(fault)
            : ValidationResult.Success();
    }
}
