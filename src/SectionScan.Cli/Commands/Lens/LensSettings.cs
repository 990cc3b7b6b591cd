using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Lens;

/// <summary>What <c>sectionscan lens</c> is told.</summary>
internal sealed class LensSettings : OutputSettings
{
    private const double LeastSquareMm = 1;
    private const double MostSquareMm = 500;

    [CommandArgument(0, "<PHOTO>")]
    [Description("Photos of the bare sheet, 8 to 12 of them: square on and tilted 15 to 40 degrees from each side")]
    public string[] Photos { get; init; } = [];

    [CommandOption("--out <FILE>", isRequired: true)]
    [Description("Where to write the lens profile")]
    public string Out { get; init; } = string.Empty;

    [CommandOption("--print-ratio <X,Y>")]
    [Description("Measured over nominal length of the sheet's check bars, across and up, for example 0.998,1.001")]
    public PrintRatioOption? PrintRatio { get; init; }

    [CommandOption("--checkerboard <MM>")]
    [Description("The photos show a plain checkerboard instead; the side of its squares in millimetres")]
    public double? Checkerboard { get; init; }

    public override ValidationResult Validate() => Checkerboard is { } square && !(square is >= LeastSquareMm and <= MostSquareMm)
        ? ValidationResult.Error(FormattableString.Invariant(
            $"--checkerboard {square} is out of range: give the side of a square in millimetres, from {LeastSquareMm} to {MostSquareMm}."))
        : ValidationResult.Success();
}
