using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Measures;

/// <summary>The convex hull of points by the monotone chain.</summary>
/// <remarks>A. M. Andrew, "Another efficient algorithm for convex hulls in two dimensions", 1979 (cited from memory). Own code and
/// not the library's, because a budget takes a hundred hulls of noisy outlines: corners in the order of an outline cost time in proportion to their
/// number alone.</remarks>
internal static class ConvexHull
{
    /// <summary>The hull's corners, counter-clockwise, none on a straight side, first one not repeated; one or two points for
    /// points that coincide or lie on one line.</summary>
    /// <param name="points">One or more points in any order.</param>
    public static SectionPoint[] Of(ReadOnlySpan<SectionPoint> points)
    {
        var sorted = SortedWithoutColumns(points);
        var hull = new SectionPoint[sorted.Length + 1];
        var count = 0;
        foreach (var point in sorted)
        {
            count = Pushed(hull, count, 2, point);
        }

        var upperFrom = count + 1;
        for (var i = sorted.Length - 2; i >= 0; i--)
        {
            count = Pushed(hull, count, upperFrom, sorted[i]);
        }

        return count > 1 ? hull[..(count - 1)] : hull[..count];
    }

    private static int Pushed(SectionPoint[] hull, int count, int least, SectionPoint point)
    {
        while (count >= least && Turn(hull[count - 2], hull[count - 1], point) <= 0)
        {
            count--;
        }

        hull[count] = point;
        return count + 1;
    }

    private static double Turn(SectionPoint a, SectionPoint b, SectionPoint c) =>
        ((b.XMm - a.XMm) * (c.YMm - a.YMm)) - ((b.YMm - a.YMm) * (c.XMm - a.XMm));

    /// <summary>From left to right; of points with the same x only the lowest and the highest, in this order.</summary>
    private static ReadOnlySpan<SectionPoint> SortedWithoutColumns(ReadOnlySpan<SectionPoint> points)
    {
        var sorted = FromLeftToRight(points);
        var kept = 0;
        for (var i = 0; i < sorted.Length;)
        {
            var (low, high) = (sorted[i], sorted[i]);
            for (i++; i < sorted.Length && sorted[i].XMm == low.XMm; i++)
            {
                low = sorted[i].YMm < low.YMm ? sorted[i] : low;
                high = sorted[i].YMm > high.YMm ? sorted[i] : high;
            }

            sorted[kept++] = low;
            if (high != low)
            {
                sorted[kept++] = high;
            }
        }

        return sorted.AsSpan(0, kept);
    }

    private static SectionPoint[] FromLeftToRight(ReadOnlySpan<SectionPoint> points)
    {
        var (leftmost, rightmost) = (0, 0);
        for (var i = 1; i < points.Length; i++)
        {
            leftmost = points[i].XMm < points[leftmost].XMm ? i : leftmost;
            rightmost = points[i].XMm > points[rightmost].XMm ? i : rightmost;
        }

        // The floor runs from the leftmost corner to the rightmost, the roof back: two rows that are all but sorted.
        var merged = new SectionPoint[points.Length];
        var (floor, roof) = (leftmost, leftmost == 0 ? points.Length - 1 : leftmost - 1);
        var floorLeft = ((rightmost - leftmost + points.Length) % points.Length) + 1;
        var roofLeft = points.Length - floorLeft;
        for (var k = 0; k < merged.Length; k++)
        {
            if (roofLeft == 0 || (floorLeft > 0 && points[floor].XMm <= points[roof].XMm))
            {
                merged[k] = points[floor];
                floor = floor + 1 == points.Length ? 0 : floor + 1;
                floorLeft--;
            }
            else
            {
                merged[k] = points[roof];
                roof = roof == 0 ? points.Length - 1 : roof - 1;
                roofLeft--;
            }
        }

        if (!SortedByInsertion(merged))
        {
            Array.Sort(Array.ConvertAll(merged, p => p.XMm), merged);
        }

        return merged;
    }

    /// <summary>Sorts what is nearly sorted; gives up, and says so, on what is not.</summary>
    private static bool SortedByInsertion(SectionPoint[] points)
    {
        var movesLeft = 8 * points.Length;
        for (var i = 1; i < points.Length; i++)
        {
            var point = points[i];
            var to = i;
            for (; to > 0 && points[to - 1].XMm > point.XMm; to--)
            {
                points[to] = points[to - 1];
            }

            points[to] = point;
            movesLeft -= i - to;
            if (movesLeft < 0)
            {
                return false;
            }
        }

        return true;
    }
}
