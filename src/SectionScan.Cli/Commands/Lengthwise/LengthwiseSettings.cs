using System.ComponentModel;
using SectionScan.Cli.Options;
using SectionScan.Drawings.Pages;
using SectionScan.Porting.Lengthwise;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Lengthwise;

/// <summary>What <c>sectionscan lengthwise</c> is told.</summary>
internal sealed class LengthwiseSettings : OutputSettings
{
    [CommandArgument(0, "<SHAPE>")]
    [Description("The half cut lengthwise, both ends in view: a photo of a mould half on the sheet, or of a casting with the card on its face and straight bars across its open ends; a section document; or an outline as DXF, SVG or CSV")]
    public string Shape { get; init; } = string.Empty;

    [CommandOption("--reference <SHAPE>")]
    [Description("Another one to compare with, named in the same way")]
    public string? Reference { get; init; }

    [CommandOption("--align <END>")]
    [Description("Lay the two on each other at the seat, at the face, or at both as well as they go")]
    [DefaultValue("seat")]
    public string Align { get; init; } = "seat";

    [CommandOption("--face <SIDE>")]
    [Description("left or right: which end is the manifold face, roof up")]
    [DefaultValue("left")]
    public string Face { get; init; } = "left";

    [CommandOption("--thickness <MM>")]
    [Description("Height of the cut face above the paper in millimetres, for photos")]
    public double? Thickness { get; init; }

    [CommandOption("--lens <FILE>")]
    [Description("The camera's lens profile for photos, made by sectionscan lens")]
    public string? Lens { get; init; }

    [CommandOption("--print-ratio <X,Y>")]
    [Description("Measured over nominal length of the target's check bars, across and up, for example 0.998,1.001")]
    public PrintRatioOption? PrintRatio { get; init; }

    [CommandOption("--up <DEG>")]
    [Description("Where the roof points in a photo, in degrees counter-clockwise from the target's top edge")]
    public double? Up { get; init; }

    [CommandOption("--out <DIR>")]
    [Description("Folder for the drawing, the floor and roof template (SVG, PDF, DXF) and the centreline (CSV)")]
    public string? Out { get; init; }

    [CommandOption("--paper <SIZE>")]
    [Description("The template's paper: a4, a3 or letter")]
    [DefaultValue("a4")]
    public string Paper { get; init; } = "a4";

    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what is shown")]
    public UnitOption Units { get; init; }

    public LengthwiseAlignment Alignment => Align switch
    {
        "face" => LengthwiseAlignment.Face,
        "both" => LengthwiseAlignment.Both,
        _ => LengthwiseAlignment.Seat,
    };

    public override ValidationResult Validate()
    {
        if (Align is not ("seat" or "face" or "both"))
        {
            return ValidationResult.Error($"--align {Align} is not known: give seat, face or both.");
        }

        if (Face is not ("left" or "right"))
        {
            return ValidationResult.Error($"--face {Face} is not known: give left or right.");
        }

        if (ThicknessOption.Wrong(Thickness, Units) is { } wrong)
        {
            return ValidationResult.Error(wrong);
        }

        if (Up is { } up && !(up is >= -360 and <= 360))
        {
            return ValidationResult.Error(FormattableString.Invariant($"--up {up} is out of range: give degrees from -360 to 360."));
        }

        return PaperSize.FromName(Paper) is null
            ? ValidationResult.Error($"--paper {Paper} is not known: give {string.Join(", ", PaperSize.All.Select(size => size.Name))}.")
            : ValidationResult.Success();
    }
}
