using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Profiles;

/// <summary>The medial axis of the strip between two lines: the centres of the circles that touch both (H. Blum, "A transformation for
/// extracting new descriptors of shape", 1967, cited from memory).</summary>
public static class MedialAxis
{
    // Noise of the edges makes the axis waver; over steps of a millimetre that adds next to nothing to its length.
    private const double StepMm = 1;
    private const double NormalWindowMm = 2.5;

    /// <summary>The axis between two lines that run the same way, clipped to the strip between the lines' own ends.</summary>
    /// <param name="right">The line to the right of the way.</param>
    /// <param name="left">The line to the left of it.</param>
    /// <returns>Places in order, the first and last on the straight lines that join the two lines' ends; empty when no circle touches both.</returns>
    public static IReadOnlyList<MedialPlace> Between(Profile right, Profile left)
    {
        ArgumentNullException.ThrowIfNull(right);
        ArgumentNullException.ThrowIfNull(left);
        var reach = 2 * Math.Max(right.First.DistanceTo(left.First), right.Last.DistanceTo(left.Last));
        var (near, far) = (right.Extended(reach, NormalWindowMm * 2), left.Extended(reach, NormalWindowMm * 2));
        var (nearEdges, farEdges) = (new EdgeIndex(near.Points, isClosed: false), new EdgeIndex(far.Points, isClosed: false));
        var found = new List<(SectionPoint Place, double Radius)>();
        foreach (var (at, foot) in near.Even(StepMm))
        {
            var (dx, dy) = near.DirectionAt(at, NormalWindowMm);

            // The left of the way is toward the other line.
            if (Radius(foot, -dy, dx) is { } radius)
            {
                found.Add((new(foot.XMm - (radius * dy), foot.YMm + (radius * dx)), radius));
            }
        }

        return Clipped(found, (right.First, left.First), (right.Last, left.Last));

        double? Radius(SectionPoint foot, double nx, double ny)
        {
            // How much farther the other line is than the foot: falls through zero where the circle touches both.
            double Surplus(double t) => farEdges.Nearest(new(foot.XMm + (t * nx), foot.YMm + (t * ny))).DistanceMm - t;
            var (low, high) = (0.0, reach);
            if (Surplus(high) > 0)
            {
                return null;
            }

            for (var halvings = 0; halvings < 40; halvings++)
            {
                var middle = (low + high) / 2;
                (low, high) = Surplus(middle) > 0 ? (middle, high) : (low, middle);
            }

            // Where the line itself bends in nearer elsewhere, this circle is not the largest.
            var centre = new SectionPoint(foot.XMm + (low * nx), foot.YMm + (low * ny));
            return nearEdges.Nearest(centre).DistanceMm >= low - Math.Max(0.02, 0.002 * low) ? low : null;
        }
    }

    private static List<MedialPlace> Clipped(
        List<(SectionPoint Place, double Radius)> found, (SectionPoint A, SectionPoint B) start, (SectionPoint A, SectionPoint B) end)
    {
        var places = new List<MedialPlace>();
        var along = 0.0;
        for (var i = 0; i + 1 < found.Count; i++)
        {
            var (from, to) = (found[i], found[i + 1]);
            var (beganFrom, beganTo) = (Side(start, from.Place), Side(start, to.Place));
            var (endFrom, endTo) = (Side(end, from.Place), Side(end, to.Place));
            if (places.Count == 0 && beganFrom <= 0 && beganTo > 0)
            {
                Add(Between(from, to, beganFrom / (beganFrom - beganTo)));
            }

            if (places.Count > 0)
            {
                if (endFrom <= 0 && endTo > 0)
                {
                    Add(Between(from, to, endFrom / (endFrom - endTo)));
                    return places;
                }

                Add(to);
            }
        }

        return [];

        void Add((SectionPoint Place, double Radius) next)
        {
            along += places.Count == 0 ? 0 : places[^1].Place.DistanceTo(next.Place);
            if (places.Count == 0 || along > places[^1].DistanceMm)
            {
                places.Add(new(along, next.Place, 2 * next.Radius));
            }
        }

        // Positive beyond the line from the right end to the left one, with the way.
        static double Side((SectionPoint A, SectionPoint B) line, SectionPoint p) =>
            ((line.B.YMm - line.A.YMm) * (p.XMm - line.A.XMm)) - ((line.B.XMm - line.A.XMm) * (p.YMm - line.A.YMm));

        static (SectionPoint Place, double Radius) Between((SectionPoint Place, double Radius) a, (SectionPoint Place, double Radius) b, double share) => (
            new(a.Place.XMm + (share * (b.Place.XMm - a.Place.XMm)), a.Place.YMm + (share * (b.Place.YMm - a.Place.YMm))), a.Radius + (share * (b.Radius - a.Radius)));
    }
}
