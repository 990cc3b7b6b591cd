using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Edges;

/// <summary>How far from a rough outline the face's edge is looked for, and what is known of the wall below it.</summary>
/// <param name="InwardMm">Farthest inside the rough outline.</param>
/// <param name="OutwardMm">Farthest outside.</param>
/// <param name="SmoothingMm">How much the rough outline is smoothed first (standard deviation along the path).</param>
/// <param name="SlopePenalty">Cost of a slope of 1 along one step; low while the rough outline may be wrong by a wall's width.</param>
/// <param name="Flare">How much the wall leans.</param>
/// <param name="FlareUncertaintyMm">How well that is known, mm at the wall's foot (one standard deviation).</param>
internal sealed record TraceReach(
    double InwardMm, double OutwardMm, double SmoothingMm, float SlopePenalty, WallFlare Flare, double FlareUncertaintyMm)
{
    /// <summary>The width of wall that shows at a place, mm; negative where it is hidden.</summary>
    public double StripMm(TargetPoint at, (double X, double Y) normal, ProfileSampler sampler) =>
        WallStrip.WidthMm(at, normal, sampler.Camera, sampler.HeightMm, Flare.AtMm(normal));
}
