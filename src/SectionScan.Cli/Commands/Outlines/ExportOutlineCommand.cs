using System.ComponentModel;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Outlines;
using SectionScan.Metrology.Results;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Outlines;

/// <summary>Writes bare outlines at true size for drawing programs, cutters and spreadsheets.</summary>
internal sealed class ExportOutlineCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<ExportOutlineCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var library = LibraryOption.PathOf(settings.Library);
        var sections = new List<SectionInput>();
        var failed = new List<Problem>();
        foreach (var named in settings.Sections)
        {
            if (SectionInput.Read(named, library, TimeProvider.System).TryGet(out var section, out var problem))
            {
                sections.Add(section);
            }
            else
            {
                failed.Add(problem);
            }
        }

        IReadOnlyList<string> files = [];
        if (sections.Count > 0 && !settings.Export.Write(sections, settings.Out).TryGet(out files!, out var refused))
        {
            problems.Print(refused);
            return ExitCode.UnusableInput;
        }

        failed.ForEach(problems.Print);
        if (settings.IsJson)
        {
            json.Write(new
            {
                Schema = "sectionscan/export-outline/1",
                Files = files,
                Failed = failed.Select(p => new { p.Code, Message = p.What, p.Where, p.Remedy }),
            });
        }
        else
        {
            files.ToList().ForEach(file => terminal.Answers.WriteLine(file));
        }

        return ExitCode.OfBatch(sections.Count, failed.Count);
    }

    /// <summary>What <c>sectionscan export-outline</c> is told.</summary>
    internal sealed class Settings : OutputSettings
    {
        [CommandArgument(0, "<SECTION>")]
        [Description("Section documents, outlines as DXF, SVG or CSV, or library:NUMBER")]
        public string[] Sections { get; init; } = [];

        [CommandOption("--as <KINDS>")]
        [Description(OutlineKindsOption.Description)]
        [DefaultValue(OutlineKindsOption.All)]
        public string Kinds { get; init; } = OutlineKindsOption.All;

        [CommandOption("--out <DIR>")]
        [Description("Folder for the files")]
        [DefaultValue(".")]
        public string Out { get; init; } = ".";

        [CommandOption("--units <UNITS>")]
        [Description("mm or in: the files' unit")]
        public UnitOption Units { get; init; }

        [CommandOption("--library <FILE>")]
        [Description("The library's file; else the environment's SECTIONSCAN_LIBRARY, else sectionscan-library.db here")]
        public string? Library { get; init; }

        /// <summary>The export that was asked for.</summary>
        public OutlineExport Export => new(OutlineKindsOption.Read(Kinds), Units == UnitOption.Inch);

        public override ValidationResult Validate() => OutlineKindsOption.Fault(Kinds) is { } fault
            ? ValidationResult.Error(fault)
            : ValidationResult.Success();
    }
}
