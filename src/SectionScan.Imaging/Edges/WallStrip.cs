using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Edges;

/// <summary>How wide the wall of a slice shows below its face, seen in the plane of the face.</summary>
internal static class WallStrip
{
    /// <summary>The width of the strip of wall between the face's edge and the foot of the wall, as it appears along the outward
    /// normal in the plane of the face; negative where the wall is hidden behind the face.</summary>
    /// <param name="at">A place on the face's edge, mm.</param>
    /// <param name="normal">Its outward normal.</param>
    /// <param name="camera">The camera.</param>
    /// <param name="thicknessMm">Height of the face above the paper, mm.</param>
    /// <param name="flareMm">How much farther out the wall's foot stands than the face's edge, mm; negative when undercut.</param>
    /// <remarks>A vertical wall's foot at distance d toward the camera's foot point shows d·h/H farther out in the face's plane
    /// (similar triangles: camera at H, face at h).</remarks>
    public static double WidthMm(TargetPoint at, (double X, double Y) normal, Camera camera, double thicknessMm, double flareMm = 0)
    {
        var toward = ((camera.FootPoint.XMm - at.XMm) * normal.X) + ((camera.FootPoint.YMm - at.YMm) * normal.Y);
        var share = thicknessMm / camera.HeightMm;
        return (toward * share) + (flareMm * (1 - share));
    }
}
