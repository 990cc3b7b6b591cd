using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Comparison;

/// <summary>The outline round two outlines that overlap.</summary>
public static class OutlineUnion
{
    /// <summary>The outer edge of both together; null when they do not overlap.</summary>
    public static Outline? Of(Outline first, Outline second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return OverlayNGRobust.Overlay(first.ToPolygon(), second.ToPolygon(), SpatialFunction.Union) is Polygon both
            && Outline.From(both.ExteriorRing.Coordinates.Select(c => new SectionPoint(c.X, c.Y))).TryGet(out var outline, out _)
            ? outline
            : null;
    }
}
