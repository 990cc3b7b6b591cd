using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Porting.Corrections;

/// <summary>A stretch of an outline: points that follow one another.</summary>
/// <param name="First">Index of the first point.</param>
/// <param name="Count">How many points, 1 or more.</param>
/// <param name="IsTurnedRound">True when the path that it was found by runs against the outline.</param>
internal sealed record OutlineStretch(int First, int Count, bool IsTurnedRound)
{
    private const int TangentPoints = 6;

    public static int Index(Outline outline, int i) => ((i % outline.Count) + outline.Count) % outline.Count;

    public static int Nearest(Outline outline, SectionPoint place) => Enumerable.Range(0, outline.Count).MinBy(i => outline[i].DistanceTo(place));

    /// <summary>The stretch that a path goes along: of the two ways from its first to its last place the one that the path lies nearer
    /// to; null when that is more than half of the outline.</summary>
    public static OutlineStretch? Between(Outline outline, IReadOnlyList<SectionPoint> path)
    {
        var (from, to) = (Nearest(outline, path[0]), Nearest(outline, path[^1]));
        var forward = new OutlineStretch(from, Index(outline, to - from) + 1, false);
        var backward = new OutlineStretch(to, Index(outline, from - to) + 1, true);
        var shorter = forward.Count <= backward.Count ? forward : backward;
        var chosen = path.Count == 2 ? shorter : forward.MeanDistanceMm(outline, path) <= backward.MeanDistanceMm(outline, path) ? forward : backward;
        return chosen.Count > outline.Count / 2 ? null : chosen;
    }

    /// <summary>The stretch round a point that lies within a circle; null when that is more than half of the outline.</summary>
    public static OutlineStretch? Within(Outline outline, int at, SectionPoint centre, double radiusMm)
    {
        var (before, after) = (0, 0);
        while (before + after < outline.Count / 2 && outline[at - before - 1].DistanceTo(centre) <= radiusMm)
        {
            before++;
        }

        while (before + after < outline.Count / 2 && outline[at + after + 1].DistanceTo(centre) <= radiusMm)
        {
            after++;
        }

        return before + after >= outline.Count / 2 ? null : new(Index(outline, at - before), before + after + 1, false);
    }

    /// <summary>A smooth curve through places: centripetal Catmull-Rom (Catmull and Rom 1974; parametrisation after Yuksel, Schaefer,
    /// Keyser 2011, cited from memory), which makes no loops.</summary>
    public static IReadOnlyList<SectionPoint> Smooth(IReadOnlyList<SectionPoint> path, double spacingMm)
    {
        SectionPoint[] p = [Beyond(path[1], path[0]), .. path, Beyond(path[^2], path[^1])];
        var curve = new List<SectionPoint>();
        for (var i = 1; i + 2 < p.Length; i++)
        {
            var steps = Math.Max(1, (int)Math.Ceiling(p[i].DistanceTo(p[i + 1]) / spacingMm));
            for (var k = 0; k < steps; k++)
            {
                curve.Add(At(p[i - 1], p[i], p[i + 1], p[i + 2], (double)k / steps));
            }
        }

        curve.Add(path[^1]);
        return curve;
    }

    /// <summary>A fair course over a stretch: the cubic (Hermite) that leaves and meets the outline on its sides in their directions.</summary>
    public static IReadOnlyList<SectionPoint> Fair(Outline outline, OutlineStretch stretch, double spacingMm)
    {
        var (from, to) = (outline[stretch.First - 1], outline[stretch.First + stretch.Count]);
        var (farBefore, before) = (outline[stretch.First - 1 - (2 * TangentPoints)], outline[stretch.First - 1 - TangentPoints]);
        var (after, farAfter) = (outline[stretch.First + stretch.Count + TangentPoints], outline[stretch.First + stretch.Count + (2 * TangentPoints)]);
        var length = from.DistanceTo(to);
        var (outX, outY) = EndDirection(farBefore, before, from, length);
        var (backX, backY) = EndDirection(farAfter, after, to, length);
        var (inX, inY) = (-backX, -backY);
        var steps = Math.Max(2, (int)Math.Ceiling(length / spacingMm));
        return [.. Enumerable.Range(1, steps - 1).Select(k =>
        {
            var t = (double)k / steps;
            var (t2, t3) = (t * t, t * t * t);
            var (h0, h1, h2, h3) = ((2 * t3) - (3 * t2) + 1, t3 - (2 * t2) + t, (3 * t2) - (2 * t3), t3 - t2);
            return new SectionPoint(
                (h0 * from.XMm) + (h1 * outX) + (h2 * to.XMm) + (h3 * inX), (h0 * from.YMm) + (h1 * outY) + (h2 * to.YMm) + (h3 * inY));
        })];
    }

    /// <summary>How far the stretch lies from a course at most, mm.</summary>
    public double LargestDistanceMm(Outline outline, IReadOnlyList<SectionPoint> course) =>
        Enumerable.Range(First, Count).Max(i => course.Min(p => p.DistanceTo(outline[i])));

    private double MeanDistanceMm(Outline outline, IReadOnlyList<SectionPoint> path) =>
        path.Average(p => Enumerable.Range(First, Count).Min(i => p.DistanceTo(outline[i])));

    private static (double X, double Y) Direction(SectionPoint from, SectionPoint to, double length)
    {
        var distance = Math.Max(from.DistanceTo(to), 1e-9);
        return ((to.XMm - from.XMm) / distance * length, (to.YMm - from.YMm) / distance * length);
    }

    /// <summary>The direction at the end of a course: a chord's direction is the one at its middle, so half the turn between two chords is
    /// added to the last.</summary>
    private static (double X, double Y) EndDirection(SectionPoint first, SectionPoint middle, SectionPoint end, double length)
    {
        var ((x1, y1), (x2, y2)) = (Direction(first, middle, 1), Direction(middle, end, 1));
        return Direction(new(0, 0), new((1.5 * x2) - (0.5 * x1), (1.5 * y2) - (0.5 * y1)), length);
    }

    private static SectionPoint Beyond(SectionPoint inner, SectionPoint end) => new((2 * end.XMm) - inner.XMm, (2 * end.YMm) - inner.YMm);

    // Barry and Goldman's pyramid with knots at the root of the distances.
    private static SectionPoint At(SectionPoint p0, SectionPoint p1, SectionPoint p2, SectionPoint p3, double share)
    {
        double t0 = 0, t1 = Knot(p0, p1), t2 = t1 + Knot(p1, p2), t3 = t2 + Knot(p2, p3);
        var t = t1 + (share * (t2 - t1));
        var (a1, a2, a3) = (Mix(p0, p1, t0, t1, t), Mix(p1, p2, t1, t2, t), Mix(p2, p3, t2, t3, t));
        return Mix(Mix(a1, a2, t0, t2, t), Mix(a2, a3, t1, t3, t), t1, t2, t);
    }

    private static double Knot(SectionPoint a, SectionPoint b) => Math.Max(Math.Sqrt(a.DistanceTo(b)), 1e-6);

    private static SectionPoint Mix(SectionPoint a, SectionPoint b, double from, double to, double t)
    {
        var share = (t - from) / (to - from);
        return new(a.XMm + (share * (b.XMm - a.XMm)), a.YMm + (share * (b.YMm - a.YMm)));
    }
}
