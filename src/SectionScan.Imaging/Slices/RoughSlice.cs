using OpenCvSharp;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Slices;

/// <summary>A slice as first found: where its face roughly is, as seen in the plane of the paper.</summary>
/// <param name="Rim">Points round the face, mm in the plane of the paper (not yet lifted to the face), clockwise or not.</param>
/// <param name="AreaMm2">The area inside the rim, mm².</param>
/// <param name="TouchesWindow">True when it reaches the window's border.</param>
internal sealed record RoughSlice(IReadOnlyList<TargetPoint> Rim, double AreaMm2, bool TouchesWindow)
{
    /// <summary>True when a place lies on it.</summary>
    public bool Holds(TargetPoint place) => Cv2.PointPolygonTest(
        Rim.Select(p => new Point2f((float)p.XMm, (float)p.YMm)), new Point2f((float)place.XMm, (float)place.YMm), false) >= 0;
}
