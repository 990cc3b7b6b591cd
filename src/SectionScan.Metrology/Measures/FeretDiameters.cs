using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Measures;

/// <summary>The largest and the least distance between the parallel jaws of a calliper that closes on a shape.</summary>
/// <param name="MaxMm">The largest, mm: the largest distance between two points.</param>
/// <param name="MaxDirection">The direction in which the largest is measured, from x counter-clockwise.</param>
/// <param name="MinMm">The least, mm: found with one jaw flush on a side of the convex hull. Zero for points on one line.</param>
/// <param name="MinDirection">The direction in which the least is measured, square to that side.</param>
/// <remarks>Rotating callipers: M. I. Shamos, "Computational geometry", 1978; G. Toussaint, "Solving geometric problems with the
/// rotating calipers", 1983 (both cited from memory).</remarks>
public sealed record FeretDiameters(double MaxMm, Angle MaxDirection, double MinMm, Angle MinDirection)
{
    /// <summary>The Feret diameters of points in mm, in any order.</summary>
    /// <exception cref="ArgumentException">There is no point.</exception>
    public static FeretDiameters Of(ReadOnlySpan<SectionPoint> points)
    {
        if (points.IsEmpty)
        {
            throw new ArgumentException("A shape has at least one point.", nameof(points));
        }

        var hull = ConvexHull.Of(points);
        return hull.Length < 3 ? OfLine(hull[0], hull[^1]) : OfHull(hull);
    }

    private static FeretDiameters OfLine(SectionPoint from, SectionPoint to) =>
        new(from.DistanceTo(to), Direction(from, to), 0, Direction(from, to) + Angle.FromRadians(Math.PI / 2));

    private static FeretDiameters OfHull(SectionPoint[] hull)
    {
        var count = hull.Length;
        var (max, maxFrom, maxTo) = (0.0, hull[0], hull[0]);
        var (min, minSide) = (double.PositiveInfinity, 0);
        var far = 1;
        for (var side = 0; side < count; side++)
        {
            var (from, to) = (hull[side], hull[(side + 1) % count]);
            while (Area2(from, to, hull[(far + 1) % count]) > Area2(from, to, hull[far]))
            {
                far = (far + 1) % count;
            }

            var width = Area2(from, to, hull[far]) / from.DistanceTo(to);
            if (width < min)
            {
                (min, minSide) = (width, side);
            }

            // The next corner too: on parallel sides both of its ends face this one.
            Reach(from, hull[far]);
            Reach(to, hull[far]);
            Reach(from, hull[(far + 1) % count]);
            Reach(to, hull[(far + 1) % count]);
        }

        return new(
            max,
            Direction(maxFrom, maxTo),
            min,
            Direction(hull[minSide], hull[(minSide + 1) % count]) + Angle.FromRadians(Math.PI / 2));

        void Reach(SectionPoint a, SectionPoint b)
        {
            var distance = a.DistanceTo(b);
            if (distance > max)
            {
                (max, maxFrom, maxTo) = (distance, a, b);
            }
        }
    }

    private static double Area2(SectionPoint a, SectionPoint b, SectionPoint c) =>
        ((b.XMm - a.XMm) * (c.YMm - a.YMm)) - ((b.YMm - a.YMm) * (c.XMm - a.XMm));

    private static Angle Direction(SectionPoint from, SectionPoint to) =>
        Angle.FromRadians(Math.Atan2(to.YMm - from.YMm, to.XMm - from.XMm));
}
