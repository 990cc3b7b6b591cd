using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>A library command that shows or reads lengths and areas.</summary>
internal class ShownLibrarySettings : LibrarySettings
{
    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what is shown or drawn, and what ranges without a unit mean")]
    public UnitOption Units { get; init; }
}
