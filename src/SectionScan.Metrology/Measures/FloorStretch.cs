using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Measures;

/// <summary>The middle stretch of an outline's floor: the part below the middle of its width.</summary>
internal static class FloorStretch
{
    /// <summary>The share of the width that the stretch spans. On a circle 0.6 is an arc of 74°; much more would take in the corner
    /// radii of a flat-sided port.</summary>
    public const double ShareOfWidth = 0.6;

    /// <summary>The indices of the stretch's corners, in the outline's order: from left to right along the floor.</summary>
    /// <param name="corners">Counter-clockwise corners.</param>
    public static int[] Indices(ReadOnlySpan<SectionPoint> corners)
    {
        var (left, right) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var corner in corners)
        {
            (left, right) = (Math.Min(left, corner.XMm), Math.Max(right, corner.XMm));
        }

        var middle = (left + right) / 2;
        var reach = ShareOfWidth * (right - left) / 2;
        var start = LowestAt(corners, middle);
        var indices = new LinkedList<int>();
        for (var i = start; indices.Count < corners.Length && Math.Abs(corners[i].XMm - middle) <= reach; i = Next(i, corners.Length))
        {
            indices.AddLast(i);
        }

        for (var i = Before(start, corners.Length);
            indices.Count < corners.Length && Math.Abs(corners[i].XMm - middle) <= reach;
            i = Before(i, corners.Length))
        {
            indices.AddFirst(i);
        }

        return [.. indices];
    }

    /// <summary>The corner after the lowest crossing of the upright line at <paramref name="xMm"/>.</summary>
    private static int LowestAt(ReadOnlySpan<SectionPoint> corners, double xMm)
    {
        var (best, lowest) = (0, double.PositiveInfinity);
        for (var i = 0; i < corners.Length; i++)
        {
            var (from, to) = (corners[i], corners[Next(i, corners.Length)]);
            if (from.XMm <= xMm == to.XMm <= xMm)
            {
                continue;
            }

            var y = from.YMm + ((xMm - from.XMm) / (to.XMm - from.XMm) * (to.YMm - from.YMm));
            if (y < lowest)
            {
                (best, lowest) = (Next(i, corners.Length), y);
            }
        }

        return best;
    }

    private static int Next(int i, int count) => i + 1 == count ? 0 : i + 1;

    private static int Before(int i, int count) => i == 0 ? count - 1 : i - 1;
}
