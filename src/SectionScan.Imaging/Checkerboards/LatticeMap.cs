using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Checkerboards;

/// <summary>A straight piece of lattice: pixel = origin + column·u + row·v, fitted to the points thereabouts.</summary>
internal readonly record struct LatticeMap(PixelPoint Origin, (double X, double Y) U, (double X, double Y) V)
{
    /// <summary>Length of the shorter step, px.</summary>
    public double Spacing => Math.Sqrt(Math.Min((U.X * U.X) + (U.Y * U.Y), (V.X * V.X) + (V.Y * V.Y)));

    /// <summary>Where a point is expected.</summary>
    public PixelPoint At(double column, double row) =>
        new(Origin.X + (column * U.X) + (row * V.X), Origin.Y + (column * U.Y) + (row * V.Y));

    /// <summary>Least squares through points of known index; null when they lie on one line or are fewer than three.</summary>
    public static LatticeMap? Through(IReadOnlyList<((int Column, int Row) Index, PixelPoint At)> points)
    {
        if (points.Count < 3)
        {
            return null;
        }

        var (mc, mr) = (points.Average(p => p.Index.Column), points.Average(p => p.Index.Row));
        var (mx, my) = (points.Average(p => p.At.X), points.Average(p => p.At.Y));
        double cc = 0, cr = 0, rr = 0, cx = 0, cy = 0, rx = 0, ry = 0;
        foreach (var ((column, row), at) in points)
        {
            var (c, r, x, y) = (column - mc, row - mr, at.X - mx, at.Y - my);
            cc += c * c;
            cr += c * r;
            rr += r * r;
            cx += c * x;
            cy += c * y;
            rx += r * x;
            ry += r * y;
        }

        var det = (cc * rr) - (cr * cr);
        if (det < 0.1)
        {
            return null;
        }

        var u = (((cx * rr) - (rx * cr)) / det, ((cy * rr) - (ry * cr)) / det);
        var v = (((rx * cc) - (cx * cr)) / det, ((ry * cc) - (cy * cr)) / det);
        return new(new(mx - (mc * u.Item1) - (mr * v.Item1), my - (mc * u.Item2) - (mr * v.Item2)), u, v);
    }
}
