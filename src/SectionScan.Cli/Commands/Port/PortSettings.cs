using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Port;

/// <summary>What <c>sectionscan port</c> is told.</summary>
internal sealed class PortSettings : OutputSettings
{
    [CommandArgument(0, "<SECTION>")]
    [Description("Section documents of one port, each with its station")]
    public string[] Sections { get; init; } = [];

    [CommandOption("--stations <FILE>", isRequired: true)]
    [Description("Table of stations (CSV): station,distance_mm and, where they are known, tilt_deg, turn_deg, u_mm")]
    public string Stations { get; init; } = string.Empty;

    [CommandOption("--out <FILE>", isRequired: true)]
    [Description("The port document to write, for example exemplar.port.json")]
    public string Out { get; init; } = string.Empty;

    [CommandOption("--name <NAME>")]
    [Description("The port's name; the document's file name when left out")]
    public string? Name { get; init; }

    [CommandOption("--kind <KIND>")]
    [Description("intake or exhaust")]
    [DefaultValue("intake")]
    public string Kind { get; init; } = "intake";

    [CommandOption("--bowl-from <STATION>")]
    [Description("The station where the bowl begins; from there on no change of area is called sudden")]
    public int? BowlFrom { get; init; }

    public override ValidationResult Validate() => Kind is "intake" or "exhaust"
        ? ValidationResult.Success()
        : ValidationResult.Error($"--kind {Kind} is not known: give intake or exhaust.");
}
