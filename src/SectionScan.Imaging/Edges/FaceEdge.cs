using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Edges;

/// <summary>The measured edge of a face.</summary>
/// <param name="Points">Points round it, target frame, mm in the plane of the face.</param>
/// <param name="ScatterMm">How much single readings scatter about the smooth edge (robust standard deviation), mm.</param>
/// <param name="BlurMm">Standard deviation of the edges' blur, mm.</param>
/// <param name="Flare">How the wall was found to lean.</param>
/// <param name="FlareUncertaintyMm">How well that is known, mm at the wall's foot.</param>
/// <param name="WeakShare">Share of the outline's length where there was hardly an edge to read, 0 to 1.</param>
/// <param name="PixelMm">Side of a pixel there, mm.</param>
/// <param name="Doubts">Stretches that the photo does not bear out.</param>
internal sealed record FaceEdge(
    TargetPoint[] Points, double ScatterMm, double BlurMm, WallFlare Flare, double FlareUncertaintyMm, double WeakShare, double PixelMm,
    IReadOnlyList<EdgeDoubt> Doubts)
{
    /// <summary>The outline's length, mm.</summary>
    public double PerimeterMm => Points.Select((p, i) => p.DistanceTo(Points[(i + 1) % Points.Length])).Sum();

    /// <summary>The share of the outline's length that is doubtful for a cause, 0 to 1.</summary>
    /// <param name="cause">The cause.</param>
    /// <param name="leastMm">Only stretches at least so uncertain count, mm.</param>
    public double ShareOf(EdgeDoubtCause cause, double leastMm = 0) =>
        Math.Min(1, Doubts.Where(d => d.Cause == cause && d.StandardUncertaintyMm >= leastMm).Sum(d => d.LengthMm) / PerimeterMm);
}
