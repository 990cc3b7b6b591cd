using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Comparison;

/// <summary>How alike the left and the right half of an outline are: the outline against its mirror image about the upright line
/// through its centroid.</summary>
/// <param name="IntersectionOverUnion">The common area of outline and mirror image over the area of both together: 1 when symmetric.</param>
/// <param name="MeanDeviationMm">The mean distance of the outline from its mirror image, without sign, mm.</param>
/// <param name="LargestDeviationMm">The largest distance of the outline from its mirror image, mm.</param>
public sealed record LeftRightSymmetry(double IntersectionOverUnion, double MeanDeviationMm, double LargestDeviationMm)
{
    /// <summary>The symmetry of an outline in its section frame.</summary>
    public static LeftRightSymmetry Of(Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        var centroid = PolygonMoments.Of(outline.Points).Centroid;
        var mirrored = outline.Mapped(p => new((2 * centroid.XMm) - p.XMm, p.YMm));
        var edges = new EdgeIndex(mirrored.Points, isClosed: true);
        var distances = Array.ConvertAll(OutlineSampling.Even(outline, 0.25), place => edges.Nearest(place).DistanceMm);
        return new(
            AreaOverlap.Of(outline, mirrored).IntersectionOverUnion,
            distances.Average(),
            HausdorffDistance.Between(new EdgeIndex(outline.Points, isClosed: true), edges));
    }
}
