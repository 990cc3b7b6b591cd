using SectionScan.Metrology.Comparison;

namespace SectionScan.Porting.Documents;

/// <summary>One port set against another of the same job.</summary>
/// <param name="Port">The port measured.</param>
/// <param name="With">The reference.</param>
public sealed record JobComparison(string Port, string With)
{
    /// <summary>The stations whose section a person aligned by hand, each once; null for none.</summary>
    public IReadOnlyList<JobHandAlignment>? ByHand { get; init; }
}

/// <summary>How a person aligned the section of a station by hand.</summary>
/// <param name="Station">The station.</param>
public sealed record JobHandAlignment(int Station)
{
    /// <summary>The alignment that came first.</summary>
    public AlignmentMethod After { get; init; } = AlignmentMethod.BestFitWithRotation;

    /// <summary>True when left and right of the measured section were exchanged first.</summary>
    public bool IsMirrored { get; init; }

    /// <summary>Then moved to the right, mm.</summary>
    public double RightMm { get; init; }

    /// <summary>Then moved up, mm.</summary>
    public double UpMm { get; init; }

    /// <summary>Then turned counter-clockwise about the section's own centroid, degrees.</summary>
    public double TurnDeg { get; init; }

    /// <summary>The same as an alignment.</summary>
    public AlignmentChoice Choice() => AlignmentChoice.Of(After, IsMirrored) with { ByHand = Move() };

    internal HandMove Move() => new(RightMm, UpMm, TurnDeg);
}
