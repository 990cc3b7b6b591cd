using System.ComponentModel;
using SectionScan.Cli.Options;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Templates;
using SectionScan.Porting.Templates;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Template;

/// <summary>What <c>sectionscan template</c> is told.</summary>
internal sealed class TemplateSettings : OutputSettings
{
    private const double MostMm = 20;

    [CommandArgument(0, "<SECTION>")]
    [Description("The finished port's sections: section documents, outlines as CSV, or library:NUMBER")]
    public string[] Sections { get; init; } = [];

    [CommandOption("--kind <KIND>")]
    [Description("inside (a plug plate for the port), outside (a plate whose cut-out goes over a mould) or both")]
    [DefaultValue("inside")]
    public string Kind { get; init; } = "inside";

    [CommandOption("--stage <STAGE>")]
    [Description("rough (less the finishing allowance), finish or both")]
    [DefaultValue("both")]
    public string Stage { get; init; } = "both";

    [CommandOption("--port <NAME>")]
    [Description("The port's name, to be written on the templates")]
    [DefaultValue("")]
    public string Port { get; init; } = string.Empty;

    [CommandOption("--allowance <MM>")]
    [Description("What roughing leaves for finishing, mm; about 1/32 in (common practice)")]
    [DefaultValue(SectionTemplate.UsualAllowanceMm)]
    public double AllowanceMm { get; init; } = SectionTemplate.UsualAllowanceMm;

    [CommandOption("--clearance <MM>")]
    [Description("How much smaller a plug, or larger a cut-out, is all round so that it slides, mm")]
    [DefaultValue(0.0)]
    public double ClearanceMm { get; init; }

    [CommandOption("--line-width <MM>")]
    [Description("Width of the printed line in PDF and SVG; it lies in the waste, mm")]
    [DefaultValue(0.1)]
    public double LineWidthMm { get; init; } = 0.1;

    [CommandOption("--kerf <MM>")]
    [Description("Width that the cutter takes; the DXF's path lies half of it in the waste, mm")]
    [DefaultValue(0.0)]
    public double KerfMm { get; init; }

    [CommandOption("--sheet <MM>")]
    [Description("Thickness of the sheet that is cut, mm: plugs get a slot and a handle with a tongue; 0 for no handle")]
    [DefaultValue(PlugHold.UsualSheetMm)]
    public double SheetMm { get; init; } = PlugHold.UsualSheetMm;

    [CommandOption("--stem <MM>")]
    [Description("A round hole of this diameter in a plug for a rod or screw, instead of the handle, mm")]
    [DefaultValue(0.0)]
    public double StemMm { get; init; }

    [CommandOption("--paper <PAPER>")]
    [Description("a4, letter or a3, used on its side")]
    [DefaultValue("a4")]
    public string Paper { get; init; } = "a4";

    [CommandOption("--print-ratio <X,Y>")]
    [Description("How true the printer prints: measured over nominal length of the check bars, across and up; the print is corrected by it")]
    public PrintRatioOption PrintRatio { get; init; } = PrintRatioOption.True;

    [CommandOption("--library <FILE>")]
    [Description("The library's file")]
    public string? Library { get; init; }

    [CommandOption("--out <DIR>")]
    [Description("Folder for the PDF, SVG and DXF; the current folder when left out")]
    [DefaultValue(".")]
    public string Out { get; init; } = ".";

    [CommandOption("--units <UNITS>")]
    [Description("mm or in: the unit of captions and of the DXF")]
    public UnitOption Units { get; init; }

    public override ValidationResult Validate() =>
        Kind is not ("inside" or "outside" or "both") ? Unknown("--kind", Kind, "inside, outside or both")
        : Stage is not ("rough" or "finish" or "both") ? Unknown("--stage", Stage, "rough, finish or both")
        : PaperSize.FromName(Paper) is null ? Unknown("--paper", Paper, "a4, letter or a3")
        : Outside("--allowance", AllowanceMm) ?? Outside("--clearance", ClearanceMm) ?? Outside("--kerf", KerfMm) ?? Outside("--stem", StemMm) ?? Outside("--sheet", SheetMm)
        ?? (LineWidthMm is >= 0.02 and <= 2 ? ValidationResult.Success() : ValidationResult.Error("--line-width must lie within 0.02 and 2 mm."));

    private static ValidationResult Unknown(string option, string given, string choices) =>
        ValidationResult.Error($"{option} {given} is not known: give {choices}.");

    private static ValidationResult? Outside(string option, double lengthMm) =>
        lengthMm is >= 0 and <= MostMm ? null : ValidationResult.Error(FormattableString.Invariant($"{option} must lie within 0 and {MostMm} mm."));
}
