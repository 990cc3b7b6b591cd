using SectionScan.Metrology.Comparison;

namespace SectionScan.Porting.Proof;

/// <summary>On what terms a proof is made.</summary>
/// <param name="Band">The tolerance.</param>
/// <param name="Rule">The decision rule.</param>
/// <param name="Alignment">How the finished section is laid on the target.</param>
public sealed record ProofTerms(ToleranceBand Band, DecisionRule Rule, AlignmentChoice Alignment)
{
    /// <summary>The usual averaging length, mm: about what a finger or a template's edge feels as one place. Common practice, no source.</summary>
    public const double UsualOverMm = 2;

    /// <summary>Deviations are averaged over this length of outline before they are judged, mm.</summary>
    public double OverMm { get; init; } = UsualOverMm;

    /// <summary>Another standard uncertainty of the wall that no section document knows, such as the mould's shrinkage, mm.</summary>
    public double OtherMm { get; init; }
}
