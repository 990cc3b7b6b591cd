using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Edges;

/// <summary>A closed curve on a plane parallel to the target, as points at nearly even steps with outward normals; mm, target
/// frame.</summary>
internal sealed class ClosedCurve
{
    // A normal is square on the chord between the points this far to each side: a kink of a wrong trace must not turn it away from
    // the true edge.
    private const double NormalReachMm = 0.9;
    private const double SteadyReachMm = 4;
    private const int FewPoints = 8;

    private readonly double longestStepMm;

    private ClosedCurve(TargetPoint[] points, (double X, double Y)[] normals, double stepMm)
    {
        (Points, Normals, SteadyNormals, StepMm) = (points, normals, Even(normals, stepMm), stepMm);
        longestStepMm = 1e-9;
        for (var i = 0; i < points.Length; i++)
        {
            longestStepMm = Math.Max(longestStepMm, points[i].DistanceTo(points[(i + 1) % points.Length]));
        }
    }

    /// <summary>The points, so ordered that the outward normal is to the left of the path in the y-down frame.</summary>
    public TargetPoint[] Points { get; }

    /// <summary>Unit outward normals.</summary>
    public (double X, double Y)[] Normals { get; }

    /// <summary>The normals evened out over some millimetres: for what hangs on the outline's course at large, such as how much wall
    /// shows, where a kink of a wrong trace must not count.</summary>
    public (double X, double Y)[] SteadyNormals { get; }

    /// <summary>The mean distance between neighbours, mm.</summary>
    public double StepMm { get; }

    /// <summary>A curve through points in order, at even steps of arc length.</summary>
    /// <param name="points">Three or more, either way round, first not repeated.</param>
    /// <param name="stepMm">The step wanted.</param>
    /// <param name="smoothingMm">Standard deviation of the Gaussian that smooths the path first, mm; 0 for none. Smoothing shrinks:
    /// only for rough curves that are measured again afterwards.</param>
    public static ClosedCurve Through(IReadOnlyList<TargetPoint> points, double stepMm, double smoothingMm)
    {
        var ordered = SignedArea(points) < 0 ? points.Reverse().ToArray() : [.. points];
        var even = Resample(ordered, stepMm);
        if (smoothingMm > 0)
        {
            even = Resample(Smooth(even, smoothingMm / PathLength(even) * even.Length), stepMm);
        }

        return WithNormals(even, stepMm);
    }

    /// <summary>The point nearest to a place.</summary>
    /// <remarks>A few points tell about how near it is. Neighbours are at most the longest step apart, so that from a point farther off the
    /// next ones cannot be the nearest.</remarks>
    public TargetPoint NearestTo(TargetPoint place)
    {
        var (nearest, least) = (Points[0], double.MaxValue);
        for (var i = 0; i < Points.Length; i += FewPoints)
        {
            var distance = Points[i].DistanceTo(place);
            (nearest, least) = distance < least ? (Points[i], distance) : (nearest, least);
        }

        for (var i = 0; i < Points.Length;)
        {
            var distance = Points[i].DistanceTo(place);
            if (distance < least)
            {
                (nearest, least) = (Points[i], distance);
            }

            i += Math.Max(1, (int)((distance - least) / longestStepMm));
        }

        return nearest;
    }

    /// <summary>The curve with each point moved along its normal.</summary>
    public TargetPoint[] Moved(double[] alongNormalMm)
    {
        var moved = new TargetPoint[Points.Length];
        for (var i = 0; i < moved.Length; i++)
        {
            moved[i] = new(Points[i].XMm + (alongNormalMm[i] * Normals[i].X), Points[i].YMm + (alongNormalMm[i] * Normals[i].Y));
        }

        return moved;
    }

    private static ClosedCurve WithNormals(TargetPoint[] points, double stepMm)
    {
        var n = points.Length;
        var reach = Math.Clamp((int)Math.Round(NormalReachMm / stepMm), 2, n / 6);
        var normals = new (double, double)[n];
        for (var i = 0; i < n; i++)
        {
            var (before, after) = (points[(i + n - reach) % n], points[(i + reach) % n]);
            var (dx, dy) = (after.XMm - before.XMm, after.YMm - before.YMm);
            var length = Math.Sqrt((dx * dx) + (dy * dy));

            // Positive area in a y-down frame: clockwise to the eye; the outside is to the left of the path.
            normals[i] = length > 0 ? (dy / length, -dx / length) : (0, 0);
        }

        return new(points, normals, PathLength(points) / n);
    }

    private static (double X, double Y)[] Even((double X, double Y)[] normals, double stepMm)
    {
        var n = normals.Length;
        var reach = Math.Clamp((int)Math.Round(SteadyReachMm / stepMm), 1, n / 8);
        var even = new (double, double)[n];
        for (var i = 0; i < n; i++)
        {
            double x = 0, y = 0;
            for (var k = -reach; k <= reach; k++)
            {
                var weight = reach + 1 - Math.Abs(k);
                var normal = normals[(((i + k) % n) + n) % n];
                x += weight * normal.X;
                y += weight * normal.Y;
            }

            var length = Math.Sqrt((x * x) + (y * y));
            even[i] = length > 0 ? (x / length, y / length) : normals[i];
        }

        return even;
    }

    private static double SignedArea(IReadOnlyList<TargetPoint> points)
    {
        double sum = 0;
        for (var i = 0; i < points.Count; i++)
        {
            var (p, q) = (points[i], points[(i + 1) % points.Count]);
            sum += (p.XMm * q.YMm) - (q.XMm * p.YMm);
        }

        return sum / 2;
    }

    private static double PathLength(TargetPoint[] points)
    {
        double sum = 0;
        for (var i = 0; i < points.Length; i++)
        {
            sum += points[i].DistanceTo(points[(i + 1) % points.Length]);
        }

        return sum;
    }

    private static TargetPoint[] Resample(TargetPoint[] points, double stepMm)
    {
        var length = PathLength(points);
        var count = Math.Max(24, (int)Math.Round(length / stepMm));
        var even = new TargetPoint[count];
        var (side, before) = (0, 0.0);
        var span = points[0].DistanceTo(points[1 % points.Length]);
        for (var k = 0; k < count; k++)
        {
            var at = length * k / count;
            while (before + span < at && side < points.Length - 1)
            {
                before += span;
                side++;
                span = points[side].DistanceTo(points[(side + 1) % points.Length]);
            }

            var share = span > 0 ? Math.Clamp((at - before) / span, 0, 1) : 0;
            var (p, q) = (points[side], points[(side + 1) % points.Length]);
            even[k] = new(p.XMm + (share * (q.XMm - p.XMm)), p.YMm + (share * (q.YMm - p.YMm)));
        }

        return even;
    }

    private static TargetPoint[] Smooth(TargetPoint[] points, double sigma)
    {
        var reach = Math.Min((int)Math.Ceiling(3 * sigma), (points.Length / 2) - 1);
        var weights = new double[reach + 1];
        for (var k = 0; k <= reach; k++)
        {
            weights[k] = Math.Exp(-0.5 * k * k / (sigma * sigma));
        }

        var total = weights[0] + (2 * weights.Skip(1).Sum());
        var n = points.Length;
        var smooth = new TargetPoint[n];
        for (var i = 0; i < n; i++)
        {
            double x = 0, y = 0;
            for (var k = -reach; k <= reach; k++)
            {
                var p = points[(i + k + n) % n];
                x += weights[Math.Abs(k)] * p.XMm;
                y += weights[Math.Abs(k)] * p.YMm;
            }

            smooth[i] = new(x / total, y / total);
        }

        return smooth;
    }
}
