using System.ComponentModel;
using SectionScan.Cli.Options;
using SectionScan.Drawings.Pages;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Target;

/// <summary>What <c>sectionscan target</c> is told.</summary>
internal sealed class TargetSettings : OutputSettings
{
    [CommandArgument(0, "<TARGET>")]
    [Description("sheet (for slices), card (for sawn castings) or tags (station tags to cut out)")]
    public string Target { get; init; } = string.Empty;

    [CommandOption("--paper <PAPER>")]
    [Description("a4 or letter")]
    [DefaultValue("a4")]
    public string Paper { get; init; } = "a4";

    [CommandOption("--out <DIR>")]
    [Description("Folder for the PDF and SVG; the current folder when left out")]
    [DefaultValue(".")]
    public string Out { get; init; } = ".";

    public override ValidationResult Validate()
    {
        if (Target is not ("sheet" or "card" or "tags"))
        {
            return ValidationResult.Error($"There is no target called {Target}: give sheet, card or tags.");
        }

        return PaperSize.FromName(Paper) is { } paper && paper != PaperSize.A3
            ? ValidationResult.Success()
            : ValidationResult.Error($"--paper {Paper} is not known: give a4 or letter.");
    }
}
