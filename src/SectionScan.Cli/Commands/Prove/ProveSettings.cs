using System.ComponentModel;
using SectionScan.Cli.Options;
using SectionScan.Drawings.Pages;
using SectionScan.Porting.Proof;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Prove;

/// <summary>What <c>sectionscan prove</c> is told.</summary>
internal sealed class ProveSettings : AlignmentSettings
{
    private const double MostMm = 20;
    private const double UsualToleranceMm = 0.5;

    [CommandArgument(0, "<TARGET>")]
    [Description("The target, or a folder of targets: section documents, an outline as CSV, or library:NUMBER")]
    public string Target { get; init; } = string.Empty;

    [CommandArgument(1, "<FINISHED>")]
    [Description("The finished section, or a folder of them, named in the same way; stations find each other")]
    public string Finished { get; init; } = string.Empty;

    [CommandOption("--tolerance <MM>")]
    [Description("Width of the tolerance zone, half on each side of the target (profile of a line, ISO 1101), mm")]
    [DefaultValue(UsualToleranceMm)]
    public double Tolerance { get; init; } = UsualToleranceMm;

    [CommandOption("--inside <MM>")]
    [Description("How far inside the target the wall may lie (metal left), instead of half the tolerance, mm")]
    public double? Inside { get; init; }

    [CommandOption("--outside <MM>")]
    [Description("How far outside the target the wall may lie (metal gone), instead of half the tolerance, mm")]
    public double? Outside { get; init; }

    [CommandOption("--tolerance-at <SECTOR=INSIDE,OUTSIDE>")]
    [Description("Other bounds for a sector, for example floor=0.1,0.1 or sides=0.3,0; may be repeated")]
    public string[] ToleranceAt { get; init; } = [];

    [CommandOption("--guard <FACTOR>")]
    [Description("Guard band over the standard uncertainty (ISO 14253-1): 1.645 is 95 % at one bound, 2 the whole expanded uncertainty")]
    [DefaultValue(DecisionRule.UsualGuardFactor)]
    public double Guard { get; init; } = DecisionRule.UsualGuardFactor;

    [CommandOption("--over <MM>")]
    [Description("Length of wall that deviations are averaged over before they are judged, mm")]
    [DefaultValue(ProofTerms.UsualOverMm)]
    public double Over { get; init; } = ProofTerms.UsualOverMm;

    [CommandOption("--other-u <MM>")]
    [Description("A further standard uncertainty of the wall that the documents do not know, such as the mould's shrinkage, mm")]
    public double OtherU { get; init; }

    [CommandOption("--paper <PAPER>")]
    [Description("Paper of the PDF: a4, a3 or letter")]
    [DefaultValue("a4")]
    public string Paper { get; init; } = "a4";

    /// <summary>The terms chosen; only after <see cref="Validate"/>.</summary>
    public ProofTerms Terms => new(Band()!, new(Guard), Alignment) { OverMm = Over, OtherMm = OtherU };

    public override ValidationResult Validate()
    {
        var shared = base.Validate();
        if (!shared.Successful)
        {
            return shared;
        }

        var fault =
            !(Tolerance is > 0 and <= MostMm) ? $"--tolerance is out of range: give millimetres up to {MostMm:0}."
            : !(Inside is null or (>= 0 and <= MostMm)) || !(Outside is null or (>= 0 and <= MostMm)) ? $"--inside and --outside take millimetres from 0 to {MostMm:0}."
            : Band() is null ? $"--tolerance-at takes a sector and two bounds, for example floor=0.1,0.1; sectors are {string.Join(", ", SectorWords.Known)}."
            : !(Guard is >= 0 and <= 5) ? "--guard is out of range: give a factor from 0 to 5."
            : !(Over is >= 0.25 and <= 20) ? "--over is out of range: give millimetres from 0.25 to 20."
            : !(OtherU is >= 0 and <= 5) ? "--other-u is out of range: give millimetres from 0 to 5."
            : PaperSize.FromName(Paper) is null ? $"--paper {Paper} is not known: give {string.Join(", ", PaperSize.All.Select(size => size.Name))}."
            : null;
        return fault is null ? ValidationResult.Success() : ValidationResult.Error(fault);
    }

    private ToleranceBand? Band()
    {
        var band = ToleranceBand.Of(new SectorTolerance(Inside ?? (Tolerance / 2), Outside ?? (Tolerance / 2)));
        foreach (var one in ToleranceAt)
        {
            var parts = one.Split('=');
            if (parts.Length != 2 || SectorWords.Read(parts[0]) is not { } sectors || NumberList.Read(parts[1], ',', 2) is not [>= 0 and <= MostMm, >= 0 and <= MostMm] bounds)
            {
                return null;
            }

            band = sectors.Aggregate(band, (all, sector) => all.With(sector, new(bounds[0], bounds[1])));
        }

        return band;
    }
}
