using System.ComponentModel;
using SectionScan.Cli.Options;
using SectionScan.Metrology.Comparison;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Compare;

/// <summary>What <c>sectionscan compare</c> is told.</summary>
internal sealed class CompareSettings : OutputSettings
{
    [CommandArgument(0, "<REFERENCE>")]
    [Description("The section to compare with: a section document, an outline as DXF, SVG or CSV, or library:NUMBER")]
    public string Reference { get; init; } = string.Empty;

    [CommandArgument(1, "<MEASURED>")]
    [Description("The section in question, named in the same way")]
    public string Measured { get; init; } = string.Empty;

    [CommandOption("--align <HOW>")]
    [Description("as-placed, centroids, best-fit (moved, not turned) or best-fit-turned")]
    [DefaultValue("best-fit")]
    public string Align { get; init; } = "best-fit";

    [CommandOption("--mirror")]
    [Description("Mirror the measured section left for right first, to compare a left port with a right one")]
    public bool Mirror { get; init; }

    [CommandOption("--library <FILE>")]
    [Description("The library's file")]
    public string? Library { get; init; }

    [CommandOption("--out <DIR>")]
    [Description("Folder for the drawing (SVG, PDF) and the deviations (CSV)")]
    public string? Out { get; init; }

    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what is shown")]
    public UnitOption Units { get; init; }

    /// <summary>The alignment chosen.</summary>
    public AlignmentMethod Method => Align switch
    {
        "as-placed" => AlignmentMethod.AsPlaced,
        "centroids" => AlignmentMethod.Centroids,
        "best-fit-turned" => AlignmentMethod.BestFitWithRotation,
        _ => AlignmentMethod.BestFit,
    };

    public override ValidationResult Validate() => Align is "as-placed" or "centroids" or "best-fit" or "best-fit-turned"
        ? ValidationResult.Success()
        : ValidationResult.Error($"--align {Align} is not known: give as-placed, centroids, best-fit or best-fit-turned.");
}
