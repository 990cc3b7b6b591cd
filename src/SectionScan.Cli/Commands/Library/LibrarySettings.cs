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

    /// <summary>The library's path.</summary>
    public string LibraryPath => LibraryOption.PathOf(Library);
}
