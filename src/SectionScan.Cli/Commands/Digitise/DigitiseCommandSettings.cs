using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Digitise;

/// <summary>What <c>sectionscan digitise</c> is told.</summary>
internal sealed class DigitiseCommandSettings : OutputSettings
{
    private const double MostShrinkagePercent = 10;
    private const double MostGrowthPercent = 2;
    private const double LeastSquareMm = 1;
    private const double MostSquareMm = 500;
    private const double LeastDpi = 50;
    private const double MostDpi = 9600;

    [CommandArgument(0, "<PHOTO>")]
    [Description("Photos of slices on the sheet, or of a sawn face with the card on it")]
    public string[] Photos { get; init; } = [];

    [CommandOption("--thickness <MM>")]
    [Description("Thickness of the slices in millimetres, as measured with a calliper; 0 for flat things")]
    public double? Thickness { get; init; }

    [CommandOption("--shrinkage <PERCENT>")]
    [Description("How much the mould has shrunk, in percent of length: outlines are enlarged to the port's size, for example --shrinkage 0.4")]
    public double? Shrinkage { get; init; }

    [CommandOption("--shrinkage-u <PERCENT>")]
    [Description("Standard uncertainty of the shrinkage in percent of length; else the true value is taken to lie within half of the stated one")]
    public double? ShrinkageUncertainty { get; init; }

    [CommandOption("--subject <SUBJECT>")]
    [Description("mould (slices on the sheet) or opening (ports in a face, beside the card); else told by the target")]
    public string? Subject { get; init; }

    [CommandOption("--lens <FILE>")]
    [Description("The camera's lens profile, made by sectionscan lens")]
    public string? Lens { get; init; }

    [CommandOption("--print-ratio <X,Y>")]
    [Description("Measured over nominal length of the target's check bars, across and up, for example 0.998,1.001")]
    public PrintRatioOption? PrintRatio { get; init; }

    [CommandOption("--gauge <FILE>")]
    [Description("The shop's own uncertainty of edge and scale, made by sectionscan gauge with this camera and sheet")]
    public string? Gauge { get; init; }

    [CommandOption("--checkerboard <MM>")]
    [Description("Scale from a plain checkerboard beside the things, by the side of its squares, for example --checkerboard 15")]
    public double? Checkerboard { get; init; }

    [CommandOption("--pose-from <PHOTO>")]
    [Description("The photo that shows the checkerboard, taken by the same unmoved camera before the things were laid there")]
    public string? PoseFrom { get; init; }

    [CommandOption("--points <X,Y,X,Y,MM>")]
    [Description("Scale from two points (px as displayed) and their distance, for example --points 210,1480,3350,1492,200")]
    public PointsOption? Points { get; init; }

    [CommandOption("--rectangle <X,Y,X,Y,X,Y,X,Y>")]
    [Description("Scale from a rectangle's corners (px): top left, top right, bottom right, bottom left; needs --size")]
    public RectangleOption? Rectangle { get; init; }

    [CommandOption("--size <WxH>")]
    [Description("Width and height of the rectangle in millimetres, for example --size 297x210")]
    public SizeOption? Size { get; init; }

    [CommandOption("--scan")]
    [Description("The pictures are flatbed scans: scale from the resolution in the file, faces lying on the glass")]
    public bool IsScan { get; init; }

    [CommandOption("--dpi <N>")]
    [Description("The scans' resolution in dots per inch, where the file does not tell it or tells it wrong")]
    public double? Dpi { get; init; }

    [CommandOption("--up <DEG>")]
    [Description("Where the roof points for sections without a tag, in degrees counter-clockwise from the target's top edge")]
    public double? Up { get; init; }

    [CommandOption("--out <DIR>")]
    [Description("Folder for section documents, drawings, outlines (CSV) and pictures; nothing is written without it")]
    public string? Out { get; init; }

    [CommandOption("--units <UNITS>")]
    [Description("mm or in: what is shown; documents are always in millimetres")]
    public UnitOption Units { get; init; }

    public override ValidationResult Validate()
    {
        if (ThicknessOption.Wrong(Thickness, Units) is { } wrong)
        {
            return ValidationResult.Error(wrong);
        }

        if (Subject is not (null or "mould" or "opening"))
        {
            return ValidationResult.Error($"--subject {Subject} is not known: give mould or opening, or leave it out.");
        }

        if ((ShrinkageFault() ?? ScaleFault()) is { } fault)
        {
            return ValidationResult.Error(fault);
        }

        return Up is { } up && !(up is >= -360 and <= 360)
            ? ValidationResult.Error(FormattableString.Invariant($"--up {up} is out of range: give degrees from -360 to 360."))
            : ValidationResult.Success();
    }

    private string? ShrinkageFault() => this switch
    {
        { Shrinkage: { } s } when !(s is >= -MostGrowthPercent and <= MostShrinkagePercent) => FormattableString.Invariant(
            $"--shrinkage {s} is out of range: give percent of length from -{MostGrowthPercent} (plaster that grew) to {MostShrinkagePercent}."),
        { ShrinkageUncertainty: not null, Shrinkage: null } => "--shrinkage-u needs --shrinkage: the shrinkage itself, in percent of length.",
        { ShrinkageUncertainty: { } u } when !(u is >= 0 and <= MostShrinkagePercent) => FormattableString.Invariant(
            $"--shrinkage-u {u} is out of range: give percent of length from 0 to {MostShrinkagePercent}."),
        { Shrinkage: not null, Subject: "opening" } => "--shrinkage cannot be given with --subject opening: metal does not shrink.",
        _ => null,
    };

    private string? ScaleFault()
    {
        string[] told =
        [
            .. Checkerboard is null ? Array.Empty<string>() : ["--checkerboard"], .. Points is null ? Array.Empty<string>() : ["--points"],
            .. Rectangle is null ? Array.Empty<string>() : ["--rectangle"], .. IsScan || Dpi is not null ? ["--scan"] : Array.Empty<string>(),
        ];
        if (told.Length > 1)
        {
            return $"{string.Join(" and ", told)} cannot be given together: a photo has one scale.";
        }

        if (told.Length > 0 && Gauge is not null)
        {
            return $"{told[0]} and --gauge cannot be given together: a gauge study belongs to the printed sheet or card.";
        }

        if (Checkerboard is { } square && !(square is >= LeastSquareMm and <= MostSquareMm))
        {
            return FormattableString.Invariant(
                $"--checkerboard {square} is out of range: give the side of a square in millimetres, from {LeastSquareMm} to {MostSquareMm}.");
        }

        if (PoseFrom is not null && Checkerboard is null)
        {
            return "--pose-from needs --checkerboard: the side of the squares in that photo, in millimetres.";
        }

        if (Rectangle is null != Size is null)
        {
            return "--rectangle and --size belong together: four corners in the photo and width x height in millimetres.";
        }

        return Dpi is { } dpi && !(dpi is >= LeastDpi and <= MostDpi)
            ? FormattableString.Invariant($"--dpi {dpi} is out of range: give dots per inch from {LeastDpi} to {MostDpi}.")
            : null;
    }
}
