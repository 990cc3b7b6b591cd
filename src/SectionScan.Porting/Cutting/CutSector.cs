using SectionScan.Metrology.Comparison;

namespace SectionScan.Porting.Cutting;

/// <summary>What is to be cut at one side of the port.</summary>
/// <param name="Region">The side.</param>
/// <param name="MeanNowMm">Mean depth to remove in roughing, mm.</param>
/// <param name="MostNowMm">Greatest depth to remove in roughing, mm.</param>
/// <param name="MeanAtFinishMm">Mean depth to the target, counting as nothing where the wall lies beyond it, mm.</param>
/// <param name="MostAtFinishMm">Greatest depth to the target, mm; negative when all of the side lies beyond it.</param>
/// <param name="LeastAtFinishMm">Least depth to the target, mm; negative where the wall lies beyond it.</param>
/// <param name="NowMm2">Metal to remove in roughing, mm² of section, which is mm³ for each mm of port.</param>
/// <param name="AtFinishMm2">Metal to remove in all, mm².</param>
/// <param name="ShareToLeave">The share of the side's length where nothing may be removed, 0 to 1.</param>
public sealed record CutSector(
    OutlineRegion Region,
    double MeanNowMm,
    double MostNowMm,
    double MeanAtFinishMm,
    double MostAtFinishMm,
    double LeastAtFinishMm,
    double NowMm2,
    double AtFinishMm2,
    double ShareToLeave);
