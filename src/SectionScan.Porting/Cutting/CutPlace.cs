using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Porting.Cutting;

/// <summary>What is to be cut at one place of the target outline.</summary>
/// <param name="Target">The place on the target, section frame of the present port, mm.</param>
/// <param name="Present">The place on the present wall that it was compared with, mm.</param>
/// <param name="NormalX">x of the target's outward unit normal there.</param>
/// <param name="NormalY">y of it.</param>
/// <param name="Direction">The direction of the place from the target's centroid, from x counter-clockwise.</param>
/// <param name="Region">The side of the port.</param>
/// <param name="AtFinishMm">Depth to the target along the normal, mm; negative where the present wall already lies beyond it.</param>
/// <param name="NowMm">Depth to remove in roughing, mm: what stands beyond the finishing allowance; zero where nothing is to be roughed.</param>
/// <param name="Mark">What may be done here.</param>
public sealed record CutPlace(
    SectionPoint Target,
    SectionPoint Present,
    double NormalX,
    double NormalY,
    Angle Direction,
    OutlineRegion Region,
    double AtFinishMm,
    double NowMm,
    CutMark Mark);
