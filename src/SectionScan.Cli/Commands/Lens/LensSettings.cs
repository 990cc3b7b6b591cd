using System.ComponentModel;
using SectionScan.Cli.Options;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Lens;

/// <summary>What <c>sectionscan lens</c> is told.</summary>
internal sealed class LensSettings : OutputSettings
{
    [CommandArgument(0, "<PHOTO>")]
    [Description("Photos of the bare sheet, 8 to 12 of them: square on and tilted 15 to 40 degrees from each side")]
    public string[] Photos { get; init; } = [];

    [CommandOption("--out <FILE>", isRequired: true)]
    [Description("Where to write the lens profile")]
    public string Out { get; init; } = string.Empty;

    [CommandOption("--print-ratio <X,Y>")]
    [Description("Measured over nominal length of the sheet's check bars, across and up, for example 0.998,1.001")]
    public PrintRatioOption? PrintRatio { get; init; }
}
