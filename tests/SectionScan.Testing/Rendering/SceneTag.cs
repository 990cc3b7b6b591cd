using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Testing.Rendering;

/// <summary>A station tag on the paper: AprilTag 36h11, 10 mm, cut out with 1.5 mm of white around.</summary>
/// <param name="Id">The station.</param>
/// <param name="Centre">Its centre.</param>
/// <param name="Up">Where its printed up points, counter-clockwise from the sheet's own up.</param>
public sealed record SceneTag(int Id, TargetPoint Centre, Angle Up);
