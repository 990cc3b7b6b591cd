using SectionScan.Metrology.Frames;

namespace SectionScan.Testing.Rendering;

/// <summary>The signed distance to a polygon in the target frame, mm, negative inside, read from a grid. Between grid points the error
/// is the square of the step times the curvature over eight: 0.0003 mm for a radius of 5 mm and a step of 0.1 mm.</summary>
internal sealed class DistanceField
{
    private readonly float[] values;
    private readonly int width;
    private readonly int height;
    private readonly double left;
    private readonly double top;
    private readonly double perMm;
    private readonly double marginMm;

    public DistanceField(ReadOnlySpan<TargetPoint> polygon, double marginMm)
    {
        double minX = double.MaxValue, minY = double.MaxValue, maxX = double.MinValue, maxY = double.MinValue;
        foreach (var p in polygon)
        {
            (minX, maxX) = (Math.Min(minX, p.XMm), Math.Max(maxX, p.XMm));
            (minY, maxY) = (Math.Min(minY, p.YMm), Math.Max(maxY, p.YMm));
        }

        var step = Math.Max(0.1, Math.Max(maxX - minX, maxY - minY) / 500);
        this.marginMm = marginMm;
        (left, top, perMm) = (minX - marginMm, minY - marginMm, 1 / step);
        (width, height) = ((int)(((maxX - minX) + (2 * marginMm)) / step) + 2, (int)(((maxY - minY) + (2 * marginMm)) / step) + 2);
        CentreX = (minX + maxX) / 2;
        CentreY = (minY + maxY) / 2;
        foreach (var p in polygon)
        {
            RadiusMm = Math.Max(RadiusMm, Math.Sqrt(((p.XMm - CentreX) * (p.XMm - CentreX)) + ((p.YMm - CentreY) * (p.YMm - CentreY))));
        }

        values = Fill(polygon, step);
    }

    public double CentreX { get; }

    public double CentreY { get; }

    public double RadiusMm { get; }

    /// <summary>The distance; beyond the grid the grid's border value plus the way to the grid, continuous and never far off.</summary>
    public double At(double x, double y)
    {
        var gx = (x - left) * perMm;
        var gy = (y - top) * perMm;
        if (gx >= 0 && gy >= 0 && gx < width - 1 && gy < height - 1)
        {
            return Read(gx, gy);
        }

        var (cx, cy) = (Math.Clamp(gx, 0, width - 1.001), Math.Clamp(gy, 0, height - 1.001));
        var away = Math.Sqrt(((gx - cx) * (gx - cx)) + ((gy - cy) * (gy - cy))) / perMm;
        return away + Read(cx, cy);
    }

    /// <summary>A distance that is certainly free of the polygon, for stepping along a ray.</summary>
    public double FreeAt(double x, double y)
    {
        var gx = (x - left) * perMm;
        var gy = (y - top) * perMm;
        if (gx >= 0 && gy >= 0 && gx < width - 1 && gy < height - 1)
        {
            return Read(gx, gy);
        }

        var (cx, cy) = (Math.Clamp(gx, 0, width - 1.001), Math.Clamp(gy, 0, height - 1.001));
        return (Math.Sqrt(((gx - cx) * (gx - cx)) + ((gy - cy) * (gy - cy))) / perMm) + (0.9 * marginMm);
    }

    /// <summary>The outward direction, unit length.</summary>
    public (double X, double Y) OutwardAt(double x, double y)
    {
        const double Reach = 0.15;
        var dx = At(x + Reach, y) - At(x - Reach, y);
        var dy = At(x, y + Reach) - At(x, y - Reach);
        var length = Math.Max(1e-9, Math.Sqrt((dx * dx) + (dy * dy)));
        return (dx / length, dy / length);
    }

    private double Read(double gx, double gy)
    {
        var (ix, iy) = ((int)gx, (int)gy);
        var (fx, fy) = (gx - ix, gy - iy);
        var at = (iy * width) + ix;
        double a = values[at], b = values[at + 1], c = values[at + width], d = values[at + width + 1];
        var upper = a + (fx * (b - a));
        var lower = c + (fx * (d - c));
        return upper + (fy * (lower - upper));
    }

    // Each node learns its nearest side from its neighbours (sequential vector distance transform, P.-E. Danielsson, 1980).
    private float[] Fill(ReadOnlySpan<TargetPoint> polygon, double step)
    {
        var sides = polygon.Length;
        var nearest = new int[width * height];
        Array.Fill(nearest, -1);
        var squared = new double[width * height];
        Array.Fill(squared, double.MaxValue);
        var corners = polygon.ToArray();

        void Try(int node, int ix, int iy, int side)
        {
            var d2 = SquaredToSide(corners[side], corners[side + 1 == sides ? 0 : side + 1], left + (ix * step), top + (iy * step));
            if (d2 < squared[node])
            {
                squared[node] = d2;
                nearest[node] = side;
            }
        }

        for (var side = 0; side < sides; side++)
        {
            var (a, b) = (corners[side], corners[side + 1 == sides ? 0 : side + 1]);
            var pieces = 1 + (int)(a.DistanceTo(b) / step);
            for (var k = 0; k <= pieces; k++)
            {
                var ix = (int)((a.XMm + ((b.XMm - a.XMm) * k / pieces) - left) / step);
                var iy = (int)((a.YMm + ((b.YMm - a.YMm) * k / pieces) - top) / step);
                for (var oy = 0; oy < 2; oy++)
                {
                    for (var ox = 0; ox < 2; ox++)
                    {
                        Try(((iy + oy) * width) + ix + ox, ix + ox, iy + oy, side);
                    }
                }
            }
        }

        void Learn(int ix, int iy, int fromX, int fromY)
        {
            if (fromX < 0 || fromX >= width || fromY < 0 || fromY >= height)
            {
                return;
            }

            var side = nearest[(fromY * width) + fromX];
            if (side < 0 || side == nearest[(iy * width) + ix])
            {
                return;
            }

            Try((iy * width) + ix, ix, iy, side);
        }

        for (var pass = 0; pass < 2; pass++)
        {
            for (var n = 0; n < height; n++)
            {
                var iy = pass == 0 ? n : height - 1 - n;
                var back = pass == 0 ? iy - 1 : iy + 1;
                for (var ix = 0; ix < width; ix++)
                {
                    Learn(ix, iy, ix - 1, iy);
                    Learn(ix, iy, ix - 1, back);
                    Learn(ix, iy, ix, back);
                    Learn(ix, iy, ix + 1, back);
                }

                for (var ix = width - 1; ix >= 0; ix--)
                {
                    Learn(ix, iy, ix + 1, iy);
                }
            }
        }

        var field = new float[width * height];
        var crossings = new List<double>();
        for (var iy = 0; iy < height; iy++)
        {
            var y = top + (iy * step);
            crossings.Clear();
            for (var side = 0; side < sides; side++)
            {
                var (a, b) = (corners[side], corners[side + 1 == sides ? 0 : side + 1]);
                if (a.YMm <= y != b.YMm <= y)
                {
                    crossings.Add(a.XMm + ((b.XMm - a.XMm) * (y - a.YMm) / (b.YMm - a.YMm)));
                }
            }

            crossings.Sort();
            var passed = 0;
            for (var ix = 0; ix < width; ix++)
            {
                var x = left + (ix * step);
                while (passed < crossings.Count && crossings[passed] <= x)
                {
                    passed++;
                }

                var distance = Math.Sqrt(squared[(iy * width) + ix]);
                field[(iy * width) + ix] = (float)(passed % 2 == 1 ? -distance : distance);
            }
        }

        return field;
    }

    private static double SquaredToSide(TargetPoint a, TargetPoint b, double x, double y)
    {
        var (ux, uy) = (b.XMm - a.XMm, b.YMm - a.YMm);
        var (vx, vy) = (x - a.XMm, y - a.YMm);
        var length2 = (ux * ux) + (uy * uy);
        var along = length2 > 0 ? Math.Clamp(((ux * vx) + (uy * vy)) / length2, 0, 1) : 0;
        var (dx, dy) = (vx - (along * ux), vy - (along * uy));
        return (dx * dx) + (dy * dy);
    }
}
