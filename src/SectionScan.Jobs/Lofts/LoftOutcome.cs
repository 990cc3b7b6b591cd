using SectionScan.Metrology.Solids;
using SectionScan.Porting.Lofts;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Schedules;

namespace SectionScan.Jobs.Lofts;

/// <summary>A port's solid and the files written of it.</summary>
/// <param name="Port">The port.</param>
/// <param name="Loft">Its solid.</param>
/// <param name="Mesh">The solid's surface.</param>
/// <param name="Schedule">The volume from the sections' areas, with its uncertainty.</param>
/// <param name="Files">Full paths of the files written.</param>
public sealed record LoftOutcome(Port Port, Loft Loft, TriangleMesh Mesh, PortVolume Schedule, IReadOnlyList<string> Files)
{
    /// <summary>The solid's volume less that from the sections' areas, as a share of it.</summary>
    public double VolumeDifference => (Mesh.VolumeMm3 / Schedule.VolumeMm3.Value) - 1;
}
