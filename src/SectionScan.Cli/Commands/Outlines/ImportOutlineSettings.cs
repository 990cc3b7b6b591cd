using System.ComponentModel;
using SectionScan.Cli.Options;
using SectionScan.Drawings.Outlines;
using SectionScan.Jobs.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Sections;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Outlines;

/// <summary>What <c>sectionscan import-outline</c> is told.</summary>
internal sealed class ImportOutlineSettings : OutputSettings
{
    private const double MostThicknessMm = 60;
    private const double MostGapMm = 5;

    [CommandArgument(0, "<DRAWING>")]
    [Description("Drawings: DXF (text form), SVG at true size, or CSV with the head line x_mm,y_mm or x_in,y_in")]
    public string[] Drawings { get; init; } = [];

    [CommandOption("--file-units <UNIT>")]
    [Description("The drawing's unit, mm, cm or in, when the file does not say it or says it wrongly")]
    public string? FileUnits { get; init; }

    [CommandOption("--layer <NAME>")]
    [Description("The layer or group that the outline stands in")]
    public string? Layer { get; init; }

    [CommandOption("--contour <N>")]
    [Description("Which closed line, when there are several: 1 for the largest")]
    public int? Contour { get; init; }

    [CommandOption("--gap <MM>")]
    [Description("How far the ends of lines may lie apart and still meet, in millimetres")]
    [DefaultValue(OutlineChoice.UsualGapMm)]
    public double GapMm { get; init; } = OutlineChoice.UsualGapMm;

    [CommandOption("--station <N>")]
    [Description("The station")]
    public int? Station { get; init; }

    [CommandOption("--subject <SUBJECT>")]
    [Description("What was drawn: opening or mould")]
    [DefaultValue("opening")]
    public string Subject { get; init; } = "opening";

    [CommandOption("--thickness <MM>")]
    [Description("Thickness of the slice, when a mould was drawn")]
    public double ThicknessMm { get; init; }

    [CommandOption("--edge-u <MM>")]
    [Description("Standard uncertainty of the drawn edge; without it nothing is known of the outline's uncertainty")]
    public double? EdgeUncertaintyMm { get; init; }

    [CommandOption("--turn <DEG>")]
    [Description("Turn the outline counter-clockwise, so that the roof is up")]
    public double TurnDeg { get; init; }

    [CommandOption("--mirror")]
    [Description("Mirror left for right first: it was drawn looking upstream")]
    public bool Mirror { get; init; }

    [CommandOption("--keep-origin")]
    [Description("Keep the drawing's origin; else it goes to the centroid")]
    public bool KeepOrigin { get; init; }

    [CommandOption("--out <DIR>")]
    [Description("Folder for the section documents")]
    [DefaultValue(".")]
    public string Out { get; init; } = ".";

    [CommandOption("--replace")]
    [Description("Put the new section documents in the place of others that have their names; without it these are kept")]
    public bool Replace { get; init; }

    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what is shown")]
    public UnitOption Units { get; init; }

    /// <summary>The import that was asked for.</summary>
    public OutlineImport Import => new(
        new(MmPerUnit, Layer, Contour, GapMm), Station, Subject == "mould" ? SectionSubject.Mould : SectionSubject.Opening, ThicknessMm,
        EdgeUncertaintyMm, Angle.FromDegrees(TurnDeg), Mirror, KeepOrigin, $"{SectionScanApp.Name} {SectionScanApp.Version}");

    private double? MmPerUnit => FileUnits switch { "mm" => 1, "cm" => 10, "in" => 25.4, _ => null };

    public override ValidationResult Validate() => Fault() is { } fault ? ValidationResult.Error(fault) : ValidationResult.Success();

    private string? Fault() =>
        FileUnits is not (null or "mm" or "cm" or "in") ? $"--file-units {FileUnits} is not known: give mm, cm or in."
        : Contour < 1 ? $"--contour {Contour} is out of range: 1 is the largest closed line."
        : !(GapMm is >= 0 and <= MostGapMm) ? FormattableString.Invariant($"--gap {GapMm} is out of range: give 0 to {MostGapMm} mm.")
        : Station < 0 ? $"--station {Station} is out of range: give 0 or more."
        : Station is not null && Drawings.Length > 1 ? "--station can be given for one drawing only."
        : Subject is not ("mould" or "opening") ? $"--subject {Subject} is not known: give mould or opening."
        : !(ThicknessMm is >= 0 and <= MostThicknessMm) ? FormattableString.Invariant($"--thickness {ThicknessMm} is out of range: give 0 to {MostThicknessMm} mm.")
        : EdgeUncertaintyMm is { } u && !(u is > 0 and < 10) ? FormattableString.Invariant($"--edge-u {u} is out of range: give more than 0 and less than 10 mm.")
        : !(TurnDeg is >= -360 and <= 360) ? FormattableString.Invariant($"--turn {TurnDeg} is out of range: give degrees from -360 to 360.")
        : null;
}
