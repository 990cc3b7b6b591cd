using System.ComponentModel;
using SectionScan.Cli.Options;
using SectionScan.Metrology.Comparison;
using SectionScan.Porting.Walls;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Cutting;

/// <summary>What <c>walls</c> and <c>cut-plan</c> are both told.</summary>
internal class CuttingSettings : OutputSettings
{
    private const double MostMm = 20;
    private const double MostLeanDeg = 75;

    [CommandOption("--keep-outs <FILE>")]
    [Description("Table (CSV) of passages and wall readings: kind (circle, line, outline, reading), station, name, x_mm, y_mm, radius_mm, wall_mm, u_mm, limit_mm, source (drawing, measured), note; in the present section's frame")]
    public string? KeepOuts { get; init; }

    [CommandOption("--core-shift <MM>")]
    [Description("How far, plus or minus, the cores may have lain from a drawing, mm; assumed, from memory")]
    [DefaultValue(0.5)]
    public double CoreShiftMm { get; init; } = WallAssumptions.Usual.CoreShiftMm;

    [CommandOption("--registration <MM>")]
    [Description("How well, plus or minus, one section lies on another or on the drawing, mm; assumed, from memory")]
    [DefaultValue(0.3)]
    public double RegistrationMm { get; init; } = WallAssumptions.Usual.RegistrationMm;

    [CommandOption("--handwork <MM>")]
    [Description("How well, plus or minus, a hand follows the template, mm; assumed, common practice")]
    [DefaultValue(0.25)]
    public double HandworkMm { get; init; } = WallAssumptions.Usual.HandworkMm;

    [CommandOption("--lean <DEG>")]
    [Description("How far the walls lean to the section, degrees: they are counted thinner by its cosine")]
    [DefaultValue(0.0)]
    public double LeanDeg { get; init; }

    [CommandOption("--align <HOW>")]
    [Description("How the other section is laid on the present one: as-placed (a target lies in its frame), centroids, best-fit or best-fit-turned")]
    [DefaultValue("as-placed")]
    public string Align { get; init; } = "as-placed";

    [CommandOption("--library <FILE>")]
    [Description("The library's file")]
    public string? Library { get; init; }

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

    /// <summary>The assumptions chosen.</summary>
    public WallAssumptions Assumptions => new(CoreShiftMm, RegistrationMm, HandworkMm, LeanDeg);

    public override ValidationResult Validate() =>
        Align is not ("as-placed" or "centroids" or "best-fit" or "best-fit-turned")
            ? ValidationResult.Error($"--align {Align} is not known: give as-placed, centroids, best-fit or best-fit-turned.")
        : LeanDeg is not (>= 0 and <= MostLeanDeg) ? ValidationResult.Error(FormattableString.Invariant($"--lean must lie within 0 and {MostLeanDeg} degrees."))
        : Outside("--core-shift", CoreShiftMm) ?? Outside("--registration", RegistrationMm) ?? Outside("--handwork", HandworkMm) ?? ValidationResult.Success();

    /// <summary>An error for a length that makes no sense.</summary>
    protected static ValidationResult? Outside(string option, double lengthMm) =>
        lengthMm is >= 0 and <= MostMm ? null : ValidationResult.Error(FormattableString.Invariant($"{option} must lie within 0 and {MostMm} mm."));
}
