using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Porting.Joints;

/// <summary>How far the manifold can be moved on the port face before it is tightened. Nothing given: as far as it takes.</summary>
public sealed record JointFreedom
{
    /// <summary>The hole's diameter less the stud's, mm; with the places of studs and holes. Null without.</summary>
    public double? ClearanceMm { get; init; }

    /// <summary>The longest shift from the start, mm; null without limit.</summary>
    public double? MostShiftMm { get; init; }

    /// <summary>The largest turn from the start either way; null without limit.</summary>
    public Angle? MostTurn { get; init; }

    /// <summary>A place of the port face and one of the manifold that stay together, such as a dowel; each in its own face's frame.</summary>
    public (SectionPoint Port, SectionPoint Manifold)? Pivot { get; init; }
}
