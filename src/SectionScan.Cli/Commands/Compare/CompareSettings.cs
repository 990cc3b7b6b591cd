using System.ComponentModel;
using System.Globalization;
using SectionScan.Cli.Options;
using SectionScan.Metrology.Comparison;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Compare;

/// <summary>What <c>sectionscan compare</c> is told.</summary>
internal sealed class CompareSettings : AlignmentSettings
{
    [CommandArgument(0, "<REFERENCE>")]
    [Description("The section to compare with: a section document, an outline as DXF, SVG or CSV, or library:NUMBER, for an earlier revision library:NUMBER@REVISION")]
    public string Reference { get; init; } = string.Empty;

    [CommandArgument(1, "<MEASURED>")]
    [Description("The section in question, named in the same way")]
    public string Measured { get; init; } = string.Empty;

    [CommandOption("--shift <X,Y>")]
    [Description("Then move the measured section by hand: to the right and up, mm, in quotes when the first is negative, for example \"-0.4,0.2\"")]
    public string? Shift { get; init; }

    [CommandOption("--turn <DEG>")]
    [Description("Then turn it by hand, counter-clockwise about its own centroid, degrees")]
    public double Turn { get; init; }

    /// <summary>The alignment with what was moved by hand.</summary>
    public AlignmentChoice Chosen => Alignment with { ByHand = Move() ?? HandMove.None };

    public override ValidationResult Validate()
    {
        var shared = base.Validate();
        return !shared.Successful ? shared
            : Move() is { IsUsable: true } ? ValidationResult.Success()
            : ValidationResult.Error(FormattableString.Invariant(
                $"--shift takes two numbers in mm with a comma between, up to {HandMove.MostMm} each, and --turn degrees from -180 to 180, for example --shift \"-0.4,0.2\" --turn 1.5."));
    }

    protected override string UsualAlign => "best-fit";

    private HandMove? Move()
    {
        if (Shift is null)
        {
            return new(0, 0, Turn);
        }

        var parts = Shift.Split(',');
        return parts.Length == 2
            && double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var x)
            && double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out var y) ? new(x, y, Turn) : null;
    }
}
