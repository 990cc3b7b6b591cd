using SectionScan.Metrology.Outlines;

namespace SectionScan.Porting.TargetShapes;

/// <summary>What target shape is wanted.</summary>
/// <param name="Own">The port's own section, mm.</param>
/// <param name="Reference">The section worked toward, laid on the own one already; the own one itself when there is none.</param>
/// <param name="Shares">How far toward the reference, sector by sector.</param>
public sealed record TargetShapeOrder(Outline Own, Outline Reference, SectorShares Shares)
{
    /// <summary>The usual fairing, mm: marks of a burr are shorter, corners of a port longer. Common practice, no source.</summary>
    public const double UsualFairingMm = 8;

    /// <summary>The factor of size of the reference, about its centroid, before anything else.</summary>
    public double ReferenceScale { get; init; } = 1;

    /// <summary>What the target's measure is to be, met by the reference's factor of size; null for no such wish.</summary>
    public (LimitedMeasure Kind, double Value)? Wanted { get; init; }

    /// <summary>Wider beside the guide, or null.</summary>
    public GuideWidening? Widening { get; init; }

    /// <summary>Limits of measures.</summary>
    public IReadOnlyList<ShapeLimit> Limits { get; init; } = [];

    /// <summary>Distances to keep.</summary>
    public IReadOnlyList<Clearance> Clearances { get; init; } = [];

    /// <summary>Waves of the target shorter than this are faired out, mm; zero for no fairing.</summary>
    public double FairingMm { get; init; } = UsualFairingMm;
}
