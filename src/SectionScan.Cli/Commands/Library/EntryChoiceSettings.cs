using System.ComponentModel;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Search;
using SectionScan.Metrology.Results;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>A library command about the entries that are so.</summary>
internal class EntryChoiceSettings : ShownLibrarySettings
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

    /// <summary>The choice.</summary>
    public Result<EntryFilter> Filter()
    {
        var all = new EntryFilter(Head, null, Station, Stage, Tag, IncludesRemoved: Removed);
        return Port is null ? all : PortName.Parse(Port).Then<EntryFilter>(name => all with { Port = name });
    }
}
