using System.ComponentModel;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Search;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using SectionScan.Metrology.Results;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Lists the library's entries.</summary>
internal sealed class LibraryListCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LibraryListCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var listed = PortOf(settings).Then(port => LibrarySource.Use(settings.LibraryPath, TimeProvider.System, library =>
            library.List(new EntryFilter(settings.Head, port.Name, settings.Station, settings.Stage, settings.Tag, IncludesRemoved: settings.Removed))));
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
            EntryView.Show(terminal, entries);
        }

        return ExitCode.Done;
    }

    private static Result<WantedPort> PortOf(Settings settings) => settings.Port is null
        ? new WantedPort(null)
        : PortName.Parse(settings.Port).Then<WantedPort>(name => new WantedPort(name));

    private sealed record WantedPort(PortName? Name);

    /// <summary>What <c>sectionscan library list</c> is told.</summary>
    internal sealed class Settings : LibrarySettings
    {
        [CommandOption("--head <NAME>")]
        [Description("Only this head")]
        public string? Head { get; init; }

        [CommandOption("--port <PORT>")]
        [Description("Only this port, such as \"intake 1\"")]
        public string? Port { get; init; }

        [CommandOption("--station <N>")]
        [Description("Only this station")]
        public int? Station { get; init; }

        [CommandOption("--stage <STAGE>")]
        [Description("Only this stage of the work")]
        public string? Stage { get; init; }

        [CommandOption("--tag <TAG>")]
        [Description("Only entries with this tag")]
        public string? Tag { get; init; }

        [CommandOption("--removed")]
        [Description("Also entries marked as removed")]
        public bool Removed { get; init; }
    }
}
