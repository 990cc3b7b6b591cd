using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Measures;

/// <summary>The numbers of one polygon that measures are made of, each worked out once and only when asked for. For one thread.</summary>
/// <remarks>Unlike an <see cref="Outline"/> the polygon need not be simple: a sum of uncertainty moves corners without checking.</remarks>
public sealed class PolygonFacts
{
    private readonly SectionPoint[] corners;
    private double? area;
    private double? perimeter;
    private (double WidthMm, double HeightMm)? extent;
    private FeretDiameters? feret;
    private PolygonMoments? moments;

    internal PolygonFacts(SectionPoint[] corners) => this.corners = corners;

    /// <summary>N ≥ 3 corners in mm, counter-clockwise, first one not repeated.</summary>
    public ReadOnlySpan<SectionPoint> Corners => corners;

    /// <summary>The enclosed area in mm².</summary>
    public double AreaMm2 => area ??= PolygonMoments.SignedAreaMm2(corners);

    /// <summary>The length of the polygon in mm.</summary>
    public double PerimeterMm => perimeter ??= Perimeter(corners);

    /// <summary>The extent along x in mm.</summary>
    public double WidthMm => (extent ??= Extent(corners)).WidthMm;

    /// <summary>The extent along y in mm.</summary>
    public double HeightMm => (extent ??= Extent(corners)).HeightMm;

    /// <summary>The largest and the least calliper width.</summary>
    public FeretDiameters Feret => feret ??= FeretDiameters.Of(corners);

    /// <summary>Area, centroid and second moments.</summary>
    public PolygonMoments Moments => moments ??= PolygonMoments.Of(corners);

    /// <summary>The facts of an outline.</summary>
    public static PolygonFacts Of(Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return new(outline.Points.ToArray());
    }

    private static double Perimeter(ReadOnlySpan<SectionPoint> corners)
    {
        var sum = corners[^1].DistanceTo(corners[0]);
        for (var i = 1; i < corners.Length; i++)
        {
            sum += corners[i - 1].DistanceTo(corners[i]);
        }

        return sum;
    }

    private static (double WidthMm, double HeightMm) Extent(ReadOnlySpan<SectionPoint> corners)
    {
        var (left, right, floor, roof) = (corners[0].XMm, corners[0].XMm, corners[0].YMm, corners[0].YMm);
        foreach (var corner in corners)
        {
            left = Math.Min(left, corner.XMm);
            right = Math.Max(right, corner.XMm);
            floor = Math.Min(floor, corner.YMm);
            roof = Math.Max(roof, corner.YMm);
        }

        return (right - left, roof - floor);
    }
}
