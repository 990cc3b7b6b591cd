using System.ComponentModel;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using SectionScan.Metrology.Results;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Adds section documents to the library.</summary>
internal sealed class LibraryAddCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryAddCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var added = new List<EntrySummary>();
        var failed = new List<Problem>();
        var run = LibrarySource.Use<List<EntrySummary>>(settings.LibraryPath, TimeProvider.System, library =>
        {
            foreach (var document in settings.Documents)
            {
                if (Add(library, document, settings).TryGet(out var entry, out var problem))
                {
                    added.Add(entry);
                }
                else
                {
                    failed.Add(problem);
                }
            }

            failed.AddRange(settings.Photos.Select(photo => PhotoKeeping.KeepFor(library, added, photo)).OfType<Problem>());
            return added;
        });
        if (!run.TryGet(out _, out var unusable))
        {
            failed.Add(unusable);
        }

        failed.ForEach(problems.Print);
        if (settings.IsJson)
        {
            json.Write(new
            {
                Schema = "sectionscan/library-add/1",
                Added = added.Select(EntryView.Of),
                Failed = failed.Select(p => new { p.Code, Message = p.What, p.Where, p.Remedy }),
            });
        }
        else
        {
            EntryView.Show(terminal, added, settings.Units);
        }

        return ExitCode.OfBatch(added.Count, failed.Count);
    }

    private static Result<EntrySummary> Add(SectionLibrary library, string path, Settings settings) =>
        SectionFile.Read(path, $"{SectionScanApp.Name} {SectionScanApp.Version}").Then(section =>
            (settings.Station ?? section.Station) is not { } station
                ? new Problem("station-missing", "The section document holds no station.", path, "Give --station N.")
                : PortName.Parse(settings.Port).Then(port => library.Add(new(
                    new(settings.Head, port, station, settings.Stage), section.Json, settings.Note, settings.Tags, [.. settings.Fields.Select(FieldOption.Read)]))));

    /// <summary>What <c>sectionscan library add</c> is told.</summary>
    internal sealed class Settings : ShownLibrarySettings
    {
        [CommandArgument(0, "<DOCUMENT>")]
        [Description("Section documents, as digitise writes them, or drawings of outlines that state their unit: DXF, SVG, CSV")]
        public string[] Documents { get; init; } = [];

        [CommandOption("--head <NAME>", isRequired: true)]
        [Description("The cylinder head")]
        public string Head { get; init; } = string.Empty;

        [CommandOption("--port <PORT>", isRequired: true)]
        [Description("The port, such as \"intake 1\" or \"exhaust 2 left\"")]
        public string Port { get; init; } = string.Empty;

        [CommandOption("--stage <STAGE>")]
        [Description("The stage of the work, such as \"as cast\" or \"finished\"")]
        public string Stage { get; init; } = string.Empty;

        [CommandOption("--station <N>")]
        [Description("The station, when the document does not hold it or holds another")]
        public int? Station { get; init; }

        [CommandOption("--note <TEXT>")]
        [Description("A note")]
        public string Note { get; init; } = string.Empty;

        [CommandOption("--tag <TAG>")]
        [Description("A word to find it by; may be given several times")]
        public string[] Tags { get; init; } = [];

        [CommandOption("--photo <FILE>")]
        [Description("The original photo, to be kept in the library with the sections that came from it; may be given several times")]
        public string[] Photos { get; init; } = [];

        [CommandOption("--field <NAME=VALUE>")]
        [Description("A number with its unit, such as \"valve diameter=33 mm\"; may be given several times")]
        public string[] Fields { get; init; } = [];

        public override ValidationResult Validate() => FieldOption.Fault("--field", Fields) is { } fault
            ? ValidationResult.Error(fault)
            : ValidationResult.Success();
    }
}
