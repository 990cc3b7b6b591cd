using SectionScan.Metrology.Quantities;

namespace SectionScan.Porting.Ports;

/// <summary>Where a section was cut along its port.</summary>
/// <param name="Station">The station's number, counted with the flow.</param>
/// <param name="DistanceMm">Distance along the centreline, mm, from wherever the person began to count, with the flow.</param>
public sealed record StationPosition(int Station, double DistanceMm)
{
    /// <summary>u of a distance that nobody stated, mm: a mark on rubber and a kerf (common practice, no source).</summary>
    public const double AssumedStandardUncertaintyMm = 0.3;

    /// <summary>The most that a cut plane may lean and still be brought back to square.</summary>
    public const double MostTiltDeg = 45;

    /// <summary>How far the cut plane leans from square to the centreline, about its left-to-right axis; within ±45°.</summary>
    public Angle Tilt { get; init; }

    /// <summary>How far the centreline has turned toward the floor since the first station; the sharp turn to the seat counts here.</summary>
    /// <value>Zero all along for a port that is taken as straight.</value>
    public Angle Turn { get; init; }

    /// <summary>u of the distance, mm.</summary>
    public double DistanceStandardUncertaintyMm { get; init; } = AssumedStandardUncertaintyMm;
}
