using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Loft;

/// <summary>What <c>sectionscan loft</c> is told.</summary>
internal sealed class LoftSettings : OutputSettings
{
    [CommandArgument(0, "<SECTION>")]
    [Description("The port's section documents, one for each station")]
    public string[] Sections { get; init; } = [];

    [CommandOption("--stations <FILE>", isRequired: true)]
    [Description("The table of stations, CSV with the head line station,distance_mm,turn_deg: distance along the centreline and how far it has turned toward the floor")]
    public string Stations { get; init; } = string.Empty;

    [CommandOption("--name <NAME>")]
    [Description("The port's name, for titles and files")]
    [DefaultValue("port")]
    public string Name { get; init; } = "port";

    [CommandOption("--out <DIR>")]
    [Description("Folder for the solid (STL and OBJ in mm, glTF) and the preview from three sides (SVG, PDF); nothing is written without it")]
    public string? Out { get; init; }

    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what is shown; the solid is always in millimetres (glTF in metres)")]
    public UnitOption Units { get; init; }
}
