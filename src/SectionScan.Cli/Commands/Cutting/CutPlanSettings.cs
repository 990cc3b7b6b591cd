using System.ComponentModel;
using SectionScan.Drawings.Pages;
using SectionScan.Porting.Templates;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Cutting;

/// <summary>What <c>sectionscan cut-plan</c> is told.</summary>
internal sealed class CutPlanSettings : CuttingSettings
{
    private const double MostStepMm = 1000;

    [CommandArgument(0, "<PRESENT>")]
    [Description("The port as it is now: a section document, or a folder of them (station by station), or library:NUMBER")]
    public string Present { get; init; } = string.Empty;

    [CommandArgument(1, "<TARGET>")]
    [Description("The port as it is to become, named in the same way")]
    public string Target { get; init; } = string.Empty;

    [CommandOption("--allowance <MM>")]
    [Description("What roughing leaves for finishing, mm; about 1/32 in (common practice)")]
    [DefaultValue(SectionTemplate.UsualAllowanceMm)]
    public double AllowanceMm { get; init; } = SectionTemplate.UsualAllowanceMm;

    [CommandOption("--spacing <MM>")]
    [Description("Distance from station to station, mm, for the volume of metal")]
    public double? SpacingMm { get; init; }

    [CommandOption("--stations <FILE>")]
    [Description("Table (CSV) of where the stations lie along the centreline, as for port: station, distance_mm, tilt_deg; for the volume of metal")]
    public string? Stations { get; init; }

    [CommandOption("--port <NAME>")]
    [Description("The port's name, to be written on the plan")]
    [DefaultValue("")]
    public string Port { get; init; } = string.Empty;

    [CommandOption("--paper <PAPER>")]
    [Description("a4, letter or a3")]
    [DefaultValue("a4")]
    public string Paper { get; init; } = "a4";

    [CommandOption("--out <DIR>")]
    [Description("Folder for the pages (PDF, SVG) and the depths (CSV)")]
    public string? Out { get; init; }

    public override ValidationResult Validate() =>
        PaperSize.FromName(Paper) is null ? ValidationResult.Error($"--paper {Paper} is not known: give a4, letter or a3.")
        : SpacingMm is not (null or (> 0 and <= MostStepMm)) ? ValidationResult.Error(FormattableString.Invariant($"--spacing must lie within 0 and {MostStepMm} mm."))
        : Outside("--allowance", AllowanceMm) ?? base.Validate();
}
