using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Demo;

/// <summary>What <c>sectionscan demo</c> is told.</summary>
internal sealed class DemoSettings : OutputSettings
{
    [CommandOption("--out <DIR>")]
    [Description("Folder for all results; sectionscan-demo when left out")]
    public string Out { get; init; } = "sectionscan-demo";

    [CommandOption("--photos <DIR>")]
    [Description("Folder of the sample photographs; sample-images of the repository when left out")]
    public string? Photos { get; init; }
}
