namespace SectionScan.Imaging.Edges;

/// <summary>What the neighbours of a place foretell of it.</summary>
internal static class LocalCourse
{
    private const double ReachMm = 2.7;
    private const double LeftOutMm = 0.9;

    /// <summary>How far outward a place stands of the parabola through its neighbours, those close by left out, mm.</summary>
    /// <param name="curve">The curve, at even steps.</param>
    /// <param name="i">The place.</param>
    public static double DeviationMm(ClosedCurve curve, int i)
    {
        var n = curve.Points.Length;
        var reach = Math.Min((int)Math.Round(ReachMm / curve.StepMm), (n - 1) / 2);
        var left = Math.Min((int)Math.Round(LeftOutMm / curve.StepMm), reach / 3);
        var (origin, normal) = (curve.Points[i], curve.SteadyNormals[i]);
        double s0 = 0, s1 = 0, s2 = 0, s3 = 0, s4 = 0, t0 = 0, t1 = 0, t2 = 0;
        for (var k = -reach; k <= reach; k++)
        {
            if (Math.Abs(k) <= left)
            {
                continue;
            }

            var p = curve.Points[(i + k + n) % n];
            var (dx, dy) = (p.XMm - origin.XMm, p.YMm - origin.YMm);
            var (x, y) = ((-dx * normal.Y) + (dy * normal.X), (dx * normal.X) + (dy * normal.Y));
            var x2 = x * x;
            s0 += 1;
            s1 += x;
            s2 += x2;
            s3 += x2 * x;
            s4 += x2 * x2;
            t0 += y;
            t1 += x * y;
            t2 += x2 * y;
        }

        // Cramer's rule for the constant of y = a + b·x + c·x².
        var determinant = (s0 * ((s2 * s4) - (s3 * s3))) - (s1 * ((s1 * s4) - (s2 * s3))) + (s2 * ((s1 * s3) - (s2 * s2)));
        var constant = (t0 * ((s2 * s4) - (s3 * s3))) - (s1 * ((t1 * s4) - (s3 * t2))) + (s2 * ((t1 * s3) - (s2 * t2)));
        return Math.Abs(determinant) < 1e-12 ? 0 : -constant / determinant;
    }
}
