using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>What every library command is told.</summary>
internal class LibrarySettings : OutputSettings
{
    [CommandOption("--library <FILE>")]
    [Description("The library's file; else the environment's SECTIONSCAN_LIBRARY, else sectionscan-library.db here")]
    public string? Library { get; init; }

    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what is shown, and what ranges without a unit mean")]
    public UnitOption Units { get; init; }

    /// <summary>The library's path.</summary>
    public string LibraryPath => LibraryOption.PathOf(Library);
}
