using System.ComponentModel;
using SectionScan.Archive.Exchange;
using SectionScan.Archive.Library;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Libraries;
using SectionScan.Jobs.Outlines;
using SectionScan.Metrology.Results;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Writes entries with their history to one archive file: one section, a port, or all.</summary>
internal sealed class LibraryExportCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryExportCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Kinds is not null)
        {
            return Draw(settings);
        }

        var done = LibrarySource.UseExisting(settings.LibraryPath, TimeProvider.System, library => Export(library, settings));
        if (!done.TryGet(out var report, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/library-export/1", Report = report });
        }
        else
        {
            terminal.Answers.WriteLine(FormattableString.Invariant(
                $"{report.EntryCount} {(report.EntryCount == 1 ? "entry" : "entries")} written to {settings.File}"));
        }

        return ExitCode.Done;
    }

    private int Draw(Settings settings)
    {
        var export = new OutlineExport(OutlineKindsOption.Read(settings.Kinds!), settings.Units == UnitOption.Inch);
        var done = LibrarySource.UseExisting(settings.LibraryPath, TimeProvider.System, library =>
            Ids(library, settings).Then(ids => Sections(library, ids, settings)).Then(sections => export.Write(sections, settings.File)));
        if (!done.TryGet(out var files, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/library-export/1", Files = files });
        }
        else
        {
            terminal.Answers.WriteLine(FormattableString.Invariant($"{files.Count} files written to {settings.File}"));
        }

        return ExitCode.Done;
    }

    private static Result<IReadOnlyList<SectionInput>> Sections(SectionLibrary library, IReadOnlyList<long> ids, Settings settings)
    {
        var sections = new List<SectionInput>();
        foreach (var id in ids)
        {
            if (!library.Show(id).Then(SectionInput.From).TryGet(out var section, out var problem))
            {
                return problem;
            }

            sections.Add(section);
        }

        return sections.Count == 0 ? LibraryUseProblems.NothingChosen(settings.LibraryPath) : sections;
    }

    private static Result<ExportReport> Export(SectionLibrary library, Settings settings) =>
        Ids(library, settings).Then(ids => ids.Count == 0
            ? LibraryUseProblems.NothingChosen(settings.LibraryPath)
            : library.Export(settings.File, ids, settings.WithPhotos));

    private static Result<IReadOnlyList<long>> Ids(SectionLibrary library, Settings settings)
    {
        if (settings.Entries.Length == 0)
        {
            return settings.Filter().Then(library.List).Then<IReadOnlyList<long>>(entries => entries.Select(each => each.Id).ToList());
        }

        var ids = new List<long>();
        foreach (var entry in settings.Entries)
        {
            if (!library.Find(entry).TryGet(out var id, out var problem))
            {
                return problem;
            }

            ids.Add(id);
        }

        return ids;
    }

    /// <summary>What <c>sectionscan library export</c> is told.</summary>
    internal sealed class Settings : EntryChoiceSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("The new archive file; nothing may be there yet. With --as: the folder for the drawings")]
        public string File { get; init; } = string.Empty;

        [CommandOption("--entry <ENTRY>")]
        [Description("Only this entry, by number or path; may be given several times")]
        public string[] Entries { get; init; } = [];

        [CommandOption("--as <KINDS>")]
        [Description("Write bare outlines instead of an archive, one file for each entry and kind: " + OutlineKindsOption.All)]
        public string? Kinds { get; init; }

        [CommandOption("--photos")]
        [Description("Put the photos that are kept into the archive too")]
        public bool WithPhotos { get; init; }

        public override ValidationResult Validate() =>
            Kinds is not null && OutlineKindsOption.Fault(Kinds) is { } fault ? ValidationResult.Error(fault) :
            Entries.Length > 0 && (Head ?? Port ?? Stage ?? Tag) is not null | Station is not null | Removed
                ? ValidationResult.Error("--entry names the entries by itself: leave out --head, --port, --station, --stage, --tag and --removed.")
                : ValidationResult.Success();
    }
}
