using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Check;

/// <summary>What <c>sectionscan check</c> is told.</summary>
internal sealed class CheckSettings : OutputSettings
{
    [CommandArgument(0, "<PHOTO>")]
    [Description("Photos of slices on the sheet, or of a sawn face with the card on it")]
    public string[] Photos { get; init; } = [];

    [CommandOption("--thickness <MM>")]
    [Description("Thickness of the slices in millimetres: tells what the camera's height and their places cost")]
    public double? Thickness { get; init; }

    [CommandOption("--lens <FILE>")]
    [Description("The camera's lens profile, made by sectionscan lens")]
    public string? Lens { get; init; }

    [CommandOption("--print-ratio <X,Y>")]
    [Description("Measured over nominal length of the target's check bars, across and up, for example 0.998,1.001")]
    public PrintRatioOption? PrintRatio { get; init; }

    public override ValidationResult Validate() =>
        ThicknessOption.Wrong(Thickness, UnitOption.Millimetre) is { } wrong ? ValidationResult.Error(wrong) : ValidationResult.Success();
}
