namespace SectionScan.Testing.Rendering;

/// <summary>A prism whose cross-section at depth s below its top is the top's polygon, moved outward by draft · s and shifted by lean · s:
/// a slice, an obstacle, a casting.</summary>
internal sealed class Solid
{
    private readonly DistanceField top;

    public Solid(DistanceField field, double topMm, double bottomMm, double draft, double leanX, double leanY)
    {
        top = field;
        (TopMm, BottomMm, Draft, LeanX, LeanY) = (topMm, bottomMm, draft, leanX, leanY);
        var depth = topMm - bottomMm;
        ReachMm = field.RadiusMm + (Math.Max(0, draft) * depth) + (Math.Sqrt((leanX * leanX) + (leanY * leanY)) * depth);
    }

    public double TopMm { get; }

    public double BottomMm { get; }

    public double Draft { get; }

    public double LeanX { get; }

    public double LeanY { get; }

    /// <summary>No part lies farther than this from the top's centre, as seen from above.</summary>
    public double ReachMm { get; }

    public DistanceField Top => top;

    /// <summary>Air bubbles: centre in the plane of the top, target frame.</summary>
    public (double X, double Y, double Radius)[] Bubbles { get; init; } = [];

    /// <summary>Burrs: capsules in the plane of the top, target frame.</summary>
    public (double X0, double Y0, double X1, double Y1, double HalfWidth)[] Burrs { get; init; } = [];

    /// <summary>Signed clearance to the wall at a height, negative inside.</summary>
    public double Clearance(double x, double y, double h)
    {
        var depth = TopMm - h;
        return top.At(x - (LeanX * depth), y - (LeanY * depth)) - (Draft * depth);
    }

    /// <summary>The first hit of a ray that falls from above; position at height h is (x0 + sx (h0 - h), …) with h0 the top.</summary>
    /// <param name="x0">Where the ray pierces the plane of the top.</param>
    /// <param name="y0">Where the ray pierces the plane of the top.</param>
    /// <param name="sx">Slope of the ray: mm to the right for each mm down.</param>
    /// <param name="sy">Slope of the ray: mm down the paper for each mm down.</param>
    /// <param name="hitH">The height of the hit.</param>
    /// <returns>What was hit.</returns>
    public SolidPart Hit(double x0, double y0, double sx, double sy, out double hitH)
    {
        hitH = TopMm;
        var d = top.FreeAt(x0, y0);
        if (d < 0)
        {
            foreach (var (bx, by, radius) in Bubbles)
            {
                if (((x0 - bx) * (x0 - bx)) + ((y0 - by) * (y0 - by)) < radius * radius)
                {
                    return InBubble(x0, y0, sx, sy, bx, by, radius, out hitH);
                }
            }

            return SolidPart.Top;
        }

        foreach (var burr in Burrs)
        {
            if (d < 2 && OnBurr(burr, x0, y0))
            {
                return SolidPart.Burr;
            }
        }

        return HitWall(x0, y0, sx, sy, 0, out hitH) ? SolidPart.Wall : SolidPart.None;
    }

    private static bool OnBurr((double X0, double Y0, double X1, double Y1, double HalfWidth) burr, double x, double y)
    {
        var (ux, uy) = (burr.X1 - burr.X0, burr.Y1 - burr.Y0);
        var (vx, vy) = (x - burr.X0, y - burr.Y0);
        var along = Math.Clamp(((ux * vx) + (uy * vy)) / ((ux * ux) + (uy * uy)), 0, 1);
        var (dx, dy) = (vx - (along * ux), vy - (along * uy));

        // A flake tapers to its tip.
        var halfWidth = burr.HalfWidth * (1 - (0.7 * along));
        return (dx * dx) + (dy * dy) < halfWidth * halfWidth;
    }

    private SolidPart InBubble(double x0, double y0, double sx, double sy, double bx, double by, double radius, out double hitH)
    {
        // Down the ray to the far side of the sphere; if that lies inside the body, it is the cavity's wall.
        var (ox, oy) = (x0 - bx, y0 - by);
        var a = (sx * sx) + (sy * sy) + 1;
        var b = (ox * sx) + (oy * sy);
        var c = (ox * ox) + (oy * oy) - (radius * radius);
        var depth = (-b + Math.Sqrt((b * b) - (a * c))) / a;
        hitH = TopMm - depth;
        if (hitH > BottomMm && Clearance(x0 + (sx * depth), y0 + (sy * depth), hitH) < 0)
        {
            return SolidPart.Bubble;
        }

        // It left through the notch in the edge: outside the body from here, it may still meet the wall further down.
        return HitWall(x0, y0, sx, sy, Math.Min(depth, TopMm - BottomMm), out hitH) ? SolidPart.Wall : SolidPart.None;
    }

    private bool HitWall(double x0, double y0, double sx, double sy, double fromDepth, out double hitH)
    {
        var (vx, vy) = (sx - LeanX, sy - LeanY);
        var rate = Math.Sqrt((vx * vx) + (vy * vy)) + Math.Abs(Draft) + 1e-9;
        var bottom = TopMm - BottomMm;
        var depth = fromDepth;
        for (var k = 0; k < 200; k++)
        {
            var clear = top.FreeAt(x0 + (vx * depth), y0 + (vy * depth)) - (Draft * depth);
            if (clear < 1e-4)
            {
                hitH = TopMm - depth;
                return true;
            }

            depth += (clear / rate) + 1e-5;
            if (depth >= bottom)
            {
                break;
            }
        }

        // Grazing rays creep; what is left of the way is shorter than the clearance.
        hitH = BottomMm;
        return false;
    }
}
