using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Outlines;

/// <summary>Turns curves into chords that stray from them by no more than a tolerance.</summary>
/// <param name="Tolerance">The most that a chord may stray, drawing units, above zero.</param>
internal sealed record Chords(double Tolerance)
{
    // No chord spans more than this, so that small fillets stay round.
    private const double WidestStep = Math.PI / 90;
    private const int MostSteps = 20_000;
    private const int DeepestHalving = 16;

    /// <summary>Appends an arc of an ellipse without its first point: centre + cos(t)·u + sin(t)·v, t from <paramref name="from"/>
    /// over <paramref name="sweep"/> (radians, negative for clockwise).</summary>
    public void AddArc(List<SectionPoint> points, SectionPoint centre, SectionPoint u, SectionPoint v, double from, double sweep)
    {
        // A chord over the angle s of a circle strays by r·(1 − cos(s/2)).
        var radius = Math.Max(Math.Sqrt((u.XMm * u.XMm) + (u.YMm * u.YMm)), Math.Sqrt((v.XMm * v.XMm) + (v.YMm * v.YMm)));
        var step = radius <= Tolerance ? WidestStep : Math.Min(WidestStep, 2 * Math.Acos(1 - (Tolerance / radius)));
        var count = (int)Math.Clamp(Math.Ceiling(Math.Abs(sweep) / step), 1, MostSteps);
        for (var i = 1; i <= count; i++)
        {
            var (sin, cos) = Math.SinCos(from + (sweep * i / count));
            points.Add(new(centre.XMm + (cos * u.XMm) + (sin * v.XMm), centre.YMm + (cos * u.YMm) + (sin * v.YMm)));
        }
    }

    /// <summary>Appends a circular arc from the last point to <paramref name="end"/>.</summary>
    /// <param name="points">The corners so far, at least one.</param>
    /// <param name="end">Where it ends.</param>
    /// <param name="bulge">The tangent of a quarter of its angle, positive for counter-clockwise; zero for a straight line.</param>
    public void AddBulge(List<SectionPoint> points, SectionPoint end, double bulge)
    {
        var start = points[^1];
        var chord = start.DistanceTo(end);
        if (bulge != 0 && chord > 0)
        {
            var sweep = 4 * Math.Atan(bulge);
            var radius = chord / (2 * Math.Sin(sweep / 2));
            var toCentre = Math.Atan2(end.YMm - start.YMm, end.XMm - start.XMm) + ((Math.PI - sweep) / 2);
            var centre = new SectionPoint(start.XMm + (radius * Math.Cos(toCentre)), start.YMm + (radius * Math.Sin(toCentre)));
            var size = Math.Abs(radius);
            AddArc(points, centre, new(size, 0), new(0, size), Math.Atan2(start.YMm - centre.YMm, start.XMm - centre.XMm), sweep);
            points.RemoveAt(points.Count - 1);
        }

        points.Add(end);
    }

    /// <summary>Appends a curve without its first point, halving it until its middle and quarters lie near the chord.</summary>
    /// <param name="points">Where the corners go.</param>
    /// <param name="curve">The curve over the parameter.</param>
    /// <param name="from">First parameter.</param>
    /// <param name="to">Last parameter.</param>
    public void AddCurve(List<SectionPoint> points, Func<double, SectionPoint> curve, double from, double to)
    {
        const int FirstParts = 4;
        for (var i = 0; i < FirstParts; i++)
        {
            var (a, b) = (from + ((to - from) * i / FirstParts), from + ((to - from) * (i + 1) / FirstParts));
            Halve(points, curve, a, curve(a), b, curve(b), DeepestHalving);
        }
    }

    private void Halve(List<SectionPoint> points, Func<double, SectionPoint> curve, double from, SectionPoint start, double to, SectionPoint end, int depth)
    {
        var middle = (from + to) / 2;
        var at = curve(middle);
        var isNear = Strays(at, start, end) <= Tolerance
            && Strays(curve((from + middle) / 2), start, end) <= Tolerance
            && Strays(curve((middle + to) / 2), start, end) <= Tolerance;
        if (isNear || depth == 0)
        {
            points.Add(end);
            return;
        }

        Halve(points, curve, from, start, middle, at, depth - 1);
        Halve(points, curve, middle, at, to, end, depth - 1);
    }

    private static double Strays(SectionPoint point, SectionPoint start, SectionPoint end)
    {
        var (dx, dy) = (end.XMm - start.XMm, end.YMm - start.YMm);
        var squared = (dx * dx) + (dy * dy);
        var along = squared == 0 ? 0 : Math.Clamp((((point.XMm - start.XMm) * dx) + ((point.YMm - start.YMm) * dy)) / squared, 0, 1);
        return point.DistanceTo(new(start.XMm + (along * dx), start.YMm + (along * dy)));
    }
}
