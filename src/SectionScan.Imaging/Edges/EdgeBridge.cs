using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Edges;

/// <summary>Foretells a doubtful stretch of edge from the sound edge at both its ends, whatever the shape: a cubic that leaves each end
/// as the edge runs there. A corner between two straight sides is carried on nearly to its tip.</summary>
internal static class EdgeBridge
{
    private const double DirectionOverMm = 2;
    private const double LongestMm = 15;
    private const int Steps = 24;

    // Where no sound edge is near to tell from.
    private const double UnknownMm = 0.5;

    /// <summary>How far a doubtful place lies from the bridge, mm.</summary>
    /// <param name="curve">The curve, at even steps.</param>
    /// <param name="i">The place.</param>
    /// <param name="isSound">Whether a place of the curve is borne out by the photo.</param>
    public static double DistanceMm(ClosedCurve curve, int i, Func<int, bool> isSound)
    {
        var n = curve.Points.Length;
        var most = Math.Min(n / 3, (int)(LongestMm / curve.StepMm));
        var before = Enumerable.Range(1, most).FirstOrDefault(k => isSound((i - k + n) % n));
        var behind = Enumerable.Range(1, most).FirstOrDefault(k => isSound((i + k) % n));
        if (before == 0 || behind == 0 || (before + behind) * curve.StepMm > LongestMm)
        {
            return UnknownMm;
        }

        var over = Math.Max(1, (int)(DirectionOverMm / curve.StepMm));
        var (from, to) = (At(-before), At(behind));
        var (leave, arrive) = (Direction(At(-before - over), from), Direction(to, At(behind + over)));
        var reach = from.DistanceTo(to);
        var least = double.MaxValue;
        for (var step = 0; step <= Steps; step++)
        {
            // The cubic of Hermite through both ends with both directions.
            var t = (double)step / Steps;
            var (t2, t3) = (t * t, t * t * t);
            var (a, b, c, d) = ((2 * t3) - (3 * t2) + 1, t3 - (2 * t2) + t, (3 * t2) - (2 * t3), t3 - t2);
            least = Math.Min(least, curve.Points[i].DistanceTo(new(
                (a * from.XMm) + (b * reach * leave.X) + (c * to.XMm) + (d * reach * arrive.X),
                (a * from.YMm) + (b * reach * leave.Y) + (c * to.YMm) + (d * reach * arrive.Y))));
        }

        return least;

        // An outline that has shrunk onto a mark is shorter than the reach.
        TargetPoint At(int k) => curve.Points[(((i + k) % n) + n) % n];
    }

    private static (double X, double Y) Direction(TargetPoint from, TargetPoint to)
    {
        var length = Math.Max(from.DistanceTo(to), 1e-9);
        return ((to.XMm - from.XMm) / length, (to.YMm - from.YMm) / length);
    }
}
