using SectionScan.Metrology.Comparison;
using SectionScan.Porting.Proof;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>How a job's finished port is proved.</summary>
public sealed record ProofSettings
{
    /// <summary>The farthest bound, mm.</summary>
    public const double MostMm = 20;

    /// <summary>The largest further uncertainty, mm.</summary>
    public const double MostOtherMm = 5;

    /// <summary>The key that stands for the target shapes settled in this job.</summary>
    public const string SettledTarget = "target";

    /// <summary>The finished port, by its key; null while nothing is chosen.</summary>
    public string? Finished { get; init; }

    /// <summary>What it is proved against: <see cref="SettledTarget"/> or a port's key.</summary>
    public string Target { get; init; } = SettledTarget;

    /// <summary>How far inside the target the wall may lie, mm.</summary>
    public double InsideMm { get; init; } = 0.25;

    /// <summary>How far outside the target the wall may lie, mm.</summary>
    public double OutsideMm { get; init; } = 0.25;

    /// <summary>A further standard uncertainty of the wall that no document knows, mm.</summary>
    public double OtherMm { get; init; }

    /// <summary>How the finished section is laid on the target.</summary>
    public AlignmentMethod Alignment { get; init; } = AlignmentMethod.BestFitWithRotation;

    /// <summary>The terms of the proof.</summary>
    public ProofTerms Terms() =>
        new(ToleranceBand.Of(new SectorTolerance(InsideMm, OutsideMm)), new(DecisionRule.UsualGuardFactor), AlignmentChoice.Of(Alignment, isMirrored: false))
        {
            OtherMm = OtherMm,
        };
}
