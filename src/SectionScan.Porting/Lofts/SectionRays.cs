using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Porting.Lofts;

/// <summary>Places round an outline that belong together from section to section.</summary>
/// <remarks>Where every outline is seen whole from its centroid, places of the same direction from there: nothing twists, and no two
/// lines between sections cross. Else places of the same share of length, counted from the right.</remarks>
internal static class SectionRays
{
    /// <summary>Places on every outline, counter-clockwise from the right, as offsets from the outline's centroid.</summary>
    public static IReadOnlyList<SectionPoint[]> Of(IReadOnlyList<Outline> outlines, int count)
    {
        var centred = outlines.Select(Centred).ToList();
        return centred.All(IsSeenWhole)
            ? [.. centred.Select(points => ByDirection(points, count))]
            : [.. centred.Select(points => ByLength(points, count))];
    }

    private static SectionPoint[] Centred(Outline outline)
    {
        var centroid = PolygonMoments.Of(outline.Points).Centroid;
        return Array.ConvertAll(outline.Points.ToArray(), p => new SectionPoint(p.XMm - centroid.XMm, p.YMm - centroid.YMm));
    }

    private static bool IsSeenWhole(SectionPoint[] points)
    {
        var turned = 0.0;
        for (var i = 0; i < points.Length; i++)
        {
            var (a, b) = (points[i], points[(i + 1) % points.Length]);
            var cross = (a.XMm * b.YMm) - (a.YMm * b.XMm);
            if (cross <= 0)
            {
                return false;
            }

            turned += Math.Atan2(cross, (a.XMm * b.XMm) + (a.YMm * b.YMm));
        }

        return Math.Abs(turned - (2 * Math.PI)) < 1e-6;
    }

    private static SectionPoint[] ByDirection(SectionPoint[] points, int count)
    {
        var first = Enumerable.Range(0, points.Length).MinBy(i => DirectionOf(points[i]));
        var places = new SectionPoint[count];
        var (i, passed) = (0, 0);
        for (var k = 0; k < count; k++)
        {
            var direction = 2 * Math.PI * k / count;
            var (sin, cos) = Math.SinCos(direction);
            while (passed < points.Length && DirectionOf(At(i)) <= direction)
            {
                (i, passed) = (i + 1, passed + 1);
            }

            // The side from the corner before the ray to the one after it.
            var (a, b) = (At(i - 1), At(i));
            var (sideX, sideY) = (b.XMm - a.XMm, b.YMm - a.YMm);
            var radius = ((a.XMm * sideY) - (a.YMm * sideX)) / ((cos * sideY) - (sin * sideX));
            places[k] = new(radius * cos, radius * sin);
        }

        return places;

        SectionPoint At(int index) => points[(((first + index) % points.Length) + points.Length) % points.Length];
    }

    private static SectionPoint[] ByLength(SectionPoint[] points, int count)
    {
        // The farthest place to the right on the level of the centroid.
        var (best, start) = (double.NegativeInfinity, 0);
        for (var i = 0; i < points.Length; i++)
        {
            var (a, b) = (points[i], points[(i + 1) % points.Length]);
            if (a.YMm <= 0 != b.YMm <= 0)
            {
                var x = a.XMm - (a.YMm * (b.XMm - a.XMm) / (b.YMm - a.YMm));
                (best, start) = x > best ? (x, i) : (best, start);
            }
        }

        var turned = new List<SectionPoint> { new(best, 0) };
        turned.AddRange(Enumerable.Range(1, points.Length).Select(i => points[(start + i) % points.Length]));
        return Outline.From(turned).ValueOrThrow().Resampled(count);
    }

    private static double DirectionOf(SectionPoint p)
    {
        var direction = Math.Atan2(p.YMm, p.XMm);
        return direction < 0 ? direction + (2 * Math.PI) : direction;
    }
}
