using SectionScan.Metrology.Frames;

namespace SectionScan.Porting.Lengthwise;

/// <summary>One end of a port cut lengthwise: the straight line of its face or seat.</summary>
/// <param name="Floor">Where the floor ends on it, mm.</param>
/// <param name="Roof">Where the roof ends on it, mm.</param>
public sealed record CutEnd(SectionPoint Floor, SectionPoint Roof)
{
    /// <summary>Midway, mm.</summary>
    public SectionPoint Middle => new((Floor.XMm + Roof.XMm) / 2, (Floor.YMm + Roof.YMm) / 2);

    /// <summary>From floor to roof, mm.</summary>
    public double HeightMm => Floor.DistanceTo(Roof);
}
