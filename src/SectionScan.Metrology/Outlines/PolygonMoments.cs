using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Outlines;

/// <summary>Area, centroid and second moments of a simple polygon about its centroid.</summary>
/// <param name="AreaMm2">The enclosed area, positive for counter-clockwise corners, mm².</param>
/// <param name="Centroid">The centroid, mm.</param>
/// <param name="IxxMm4">∫y² about the centroid, mm⁴.</param>
/// <param name="IyyMm4">∫x² about the centroid, mm⁴.</param>
/// <param name="IxyMm4">∫xy about the centroid, mm⁴.</param>
/// <remarks>Green's theorem: P. Bourke, "Calculating the area and centroid of a polygon", 1988; C. Steger, "On the calculation of
/// arbitrary moments of polygons", 1996 (both cited from memory).</remarks>
public sealed record PolygonMoments(double AreaMm2, SectionPoint Centroid, double IxxMm4, double IyyMm4, double IxyMm4)
{
    /// <summary>The moments of a simple polygon of N ≥ 3 corners in mm. Corners that lie on one line give zeros and the first corner.</summary>
    public static PolygonMoments Of(ReadOnlySpan<SectionPoint> corners)
    {
        if (corners.Length < 3)
        {
            throw new ArgumentException($"A polygon has at least 3 corners, not {corners.Length}.", nameof(corners));
        }

        // About the first corner, then about the centroid: a section far from the origin loses no digits.
        var first = corners[0];
        double area2 = 0, cx = 0, cy = 0;
        for (var i = 0; i < corners.Length; i++)
        {
            var (x0, y0, x1, y1) = Side(corners, i, first);
            var cross = (x0 * y1) - (x1 * y0);
            area2 += cross;
            cx += (x0 + x1) * cross;
            cy += (y0 + y1) * cross;
        }

        if (area2 == 0)
        {
            return new(0, first, 0, 0, 0);
        }

        var centroid = new SectionPoint(first.XMm + (cx / (3 * area2)), first.YMm + (cy / (3 * area2)));
        double ixx = 0, iyy = 0, ixy = 0;
        for (var i = 0; i < corners.Length; i++)
        {
            var (x0, y0, x1, y1) = Side(corners, i, centroid);
            var cross = (x0 * y1) - (x1 * y0);
            ixx += ((y0 * y0) + (y0 * y1) + (y1 * y1)) * cross;
            iyy += ((x0 * x0) + (x0 * x1) + (x1 * x1)) * cross;
            ixy += ((x0 * y1) + (2 * x0 * y0) + (2 * x1 * y1) + (x1 * y0)) * cross;
        }

        return new(area2 / 2, centroid, ixx / 12, iyy / 12, ixy / 24);
    }

    /// <summary>The enclosed area in mm², negative for clockwise corners.</summary>
    public static double SignedAreaMm2(ReadOnlySpan<SectionPoint> corners)
    {
        double area2 = 0;
        for (var i = 0; i < corners.Length; i++)
        {
            var (x0, y0, x1, y1) = Side(corners, i, corners[0]);
            area2 += (x0 * y1) - (x1 * y0);
        }

        return area2 / 2;
    }

    private static (double X0, double Y0, double X1, double Y1) Side(ReadOnlySpan<SectionPoint> corners, int i, SectionPoint about)
    {
        var from = corners[i];
        var to = corners[i + 1 == corners.Length ? 0 : i + 1];
        return (from.XMm - about.XMm, from.YMm - about.YMm, to.XMm - about.XMm, to.YMm - about.YMm);
    }
}
