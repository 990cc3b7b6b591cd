using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Measures;

/// <summary>How an outline's area is spread: centroid, second moments and principal axes.</summary>
/// <param name="Centroid">The centroid, mm.</param>
/// <param name="Moments">Area and second moments about the centroid.</param>
/// <param name="Axes">The principal moments and the long axis.</param>
public sealed record OutlineShape(SectionPoint Centroid, PolygonMoments Moments, PrincipalAxes Axes)
{
    /// <summary>The shape of an outline.</summary>
    public static OutlineShape Of(Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        var moments = PolygonMoments.Of(outline.Points);
        return new(moments.Centroid, moments, PrincipalAxes.Of(moments));
    }
}
