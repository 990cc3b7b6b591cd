using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Comparison;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.Cutting;

/// <summary>What cut is to be planned.</summary>
/// <param name="Present">The present port: a section or a folder of them.</param>
/// <param name="Target">The target, named in the same way.</param>
/// <param name="Alignment">How the target is laid on the present section.</param>
/// <param name="AllowanceMm">What roughing leaves for finishing, mm.</param>
/// <param name="PortName">The port's name; may be empty.</param>
/// <param name="Walls">What lies behind the walls.</param>
/// <param name="Assumptions">What is assumed of them.</param>
/// <param name="StationStepMm">The distance from station to station, mm; null when it is not known.</param>
/// <param name="Paper">The paper of the pages.</param>
/// <param name="Unit">The unit shown.</param>
public sealed record CutPlanOrder(
    string Present,
    string Target,
    AlignmentMethod Alignment,
    double AllowanceMm,
    string PortName,
    PortWalls Walls,
    WallAssumptions Assumptions,
    double? StationStepMm,
    PaperSize Paper,
    LengthUnit Unit)
{
    /// <summary>Where the stations lie along the centreline, for the volume of metal; null when it is not known. Counts before the step.</summary>
    public StationTable? Places { get; init; }
}
