using System.ComponentModel;
using SectionScan.Drawings.Pages;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Cutting;

/// <summary>What <c>sectionscan walls</c> is told.</summary>
internal sealed class WallsSettings : CuttingSettings
{
    [CommandArgument(0, "<PRESENT>")]
    [Description("The section as it is now: a section document, an outline as CSV, or library:NUMBER")]
    public string Present { get; init; } = string.Empty;

    [CommandOption("--target <SECTION>")]
    [Description("The section as it is to become")]
    public string? Target { get; init; }

    [CommandOption("--finished <SECTION>")]
    [Description("The section as measured after cutting")]
    public string? Finished { get; init; }

    [CommandOption("--paper <PAPER>")]
    [Description("a4, letter or a3")]
    [DefaultValue("a4")]
    public string Paper { get; init; } = "a4";

    [CommandOption("--out <DIR>")]
    [Description("Folder for the drawing (PDF, SVG) and the table (CSV)")]
    public string? Out { get; init; }

    public override ValidationResult Validate() =>
        PaperSize.FromName(Paper) is null ? ValidationResult.Error($"--paper {Paper} is not known: give a4, letter or a3.")
        : KeepOuts is null ? ValidationResult.Error("--keep-outs is missing: name the table of passages and wall readings.") : base.Validate();
}
