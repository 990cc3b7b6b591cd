using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Check;

/// <summary>What <c>sectionscan check</c> is told.</summary>
internal sealed class CheckSettings : OutputSettings
{
    private const double MostThicknessMm = 60;

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

    public override ValidationResult Validate() => Thickness is { } thickness && !(thickness is >= 0 and <= MostThicknessMm)
        ? ValidationResult.Error(FormattableString.Invariant(
            $"--thickness {thickness} is out of range: give millimetres from 0 to {MostThicknessMm}, measured with a calliper."))
        : ValidationResult.Success();
}
