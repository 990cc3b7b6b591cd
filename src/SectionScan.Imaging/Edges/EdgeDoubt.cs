using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Edges;

/// <summary>A stretch of the measured edge that the photo does not bear out.</summary>
/// <param name="Cause">Why.</param>
/// <param name="Centre">Its middle, mm, target frame in the plane of the face.</param>
/// <param name="RadiusMm">From the middle to its ends.</param>
/// <param name="LengthMm">Its length along the outline.</param>
/// <param name="StandardUncertaintyMm">How far the true edge may lie from the measured one there, one standard uncertainty.</param>
internal sealed record EdgeDoubt(EdgeDoubtCause Cause, TargetPoint Centre, double RadiusMm, double LengthMm, double StandardUncertaintyMm);

/// <summary>Why a stretch of edge is doubtful.</summary>
internal enum EdgeDoubtCause
{
    /// <summary>There is hardly an edge.</summary>
    Faint,

    /// <summary>The readings do not agree with the trace, as where the rim of a shadow meets the edge.</summary>
    Unsteady,

    /// <summary>The wall below the face must show, and no foot of a wall is seen: what was measured may be the foot.</summary>
    WallLikeFace,

    /// <summary>The wall shows as a strip so narrow that face and wall melt into one edge.</summary>
    NarrowWall,
}
