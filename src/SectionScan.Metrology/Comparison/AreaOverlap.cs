using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Comparison;

/// <summary>The area that two outlines share.</summary>
/// <param name="IntersectionMm2">The area inside both, mm².</param>
/// <param name="UnionMm2">The area inside either, mm².</param>
public sealed record AreaOverlap(double IntersectionMm2, double UnionMm2)
{
    /// <summary>Intersection over union, the Jaccard index: 1 for equal outlines, 0 for outlines apart.</summary>
    public double IntersectionOverUnion => IntersectionMm2 / UnionMm2;

    /// <summary>The Dice coefficient, twice the intersection over the sum of the areas.</summary>
    public double Dice => 2 * IntersectionMm2 / (IntersectionMm2 + UnionMm2);

    /// <summary>The area inside one of the two alone, mm².</summary>
    public double SymmetricDifferenceMm2 => UnionMm2 - IntersectionMm2;

    /// <summary>The overlap of two outlines in the same frame.</summary>
    public static AreaOverlap Of(Outline first, Outline second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var shared = OverlayNGRobust.Overlay(first.ToPolygon(), second.ToPolygon(), SpatialFunction.Intersection).Area;
        var both = PolygonMoments.SignedAreaMm2(first.Points) + PolygonMoments.SignedAreaMm2(second.Points);
        return new(shared, both - shared);
    }
}
