using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Digitise;

/// <summary>What <c>sectionscan digitise</c> is told.</summary>
internal sealed class DigitiseCommandSettings : OutputSettings
{
    private const double MostThicknessMm = 60;

    [CommandArgument(0, "<PHOTO>")]
    [Description("Photos of slices on the sheet, or of a sawn face with the card on it")]
    public string[] Photos { get; init; } = [];

    [CommandOption("--thickness <MM>")]
    [Description("Thickness of the slices in millimetres, as measured with a calliper; 0 for flat things")]
    public double? Thickness { get; init; }

    [CommandOption("--subject <SUBJECT>")]
    [Description("mould (slices on the sheet) or opening (ports in a face, beside the card); else told by the target")]
    public string? Subject { get; init; }

    [CommandOption("--lens <FILE>")]
    [Description("The camera's lens profile, made by sectionscan lens")]
    public string? Lens { get; init; }

    [CommandOption("--print-ratio <X,Y>")]
    [Description("Measured over nominal length of the target's check bars, across and up, for example 0.998,1.001")]
    public PrintRatioOption? PrintRatio { get; init; }

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
        if (Thickness is { } thickness && !(thickness is >= 0 and <= MostThicknessMm))
        {
            return ValidationResult.Error(FormattableString.Invariant(
                $"--thickness {thickness} is out of range: give millimetres from 0 to {MostThicknessMm}, measured with a calliper."));
        }

        if (Subject is not (null or "mould" or "opening"))
        {
            return ValidationResult.Error($"--subject {Subject} is not known: give mould or opening, or leave it out.");
        }

        return Up is { } up && !(up is >= -360 and <= 360)
            ? ValidationResult.Error(FormattableString.Invariant($"--up {up} is out of range: give degrees from -360 to 360."))
            : ValidationResult.Success();
    }
}
