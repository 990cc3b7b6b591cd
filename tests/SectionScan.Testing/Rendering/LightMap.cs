namespace SectionScan.Testing.Rendering;

/// <summary>How much of the sky and of each lamp reaches the table, worked out once on a grid: shadows and contact darkening.</summary>
internal sealed class LightMap
{
    private const int SoftSamples = 24;
    private const int PathSamples = 14;
    private readonly SceneGeometry geometry;
    private readonly double left;
    private readonly double top;
    private readonly double perMm;
    private readonly int width;
    private readonly int height;
    private readonly float[] sky;
    private readonly float[][] clear;
    private readonly float[][] halfWidth;

    public LightMap(SceneGeometry geometry, IReadOnlyList<SceneLamp> lamps)
    {
        this.geometry = geometry;
        const double FarMm = 60;
        var solids = geometry.Solids;
        left = Math.Min(-30, solids.Select(s => s.Top.CentreX - s.ReachMm - FarMm).DefaultIfEmpty(0).Min());
        top = Math.Min(-30, solids.Select(s => s.Top.CentreY - s.ReachMm - FarMm).DefaultIfEmpty(0).Min());
        var right = solids.Select(s => s.Top.CentreX + s.ReachMm + FarMm).DefaultIfEmpty(0).Max();
        var bottom = solids.Select(s => s.Top.CentreY + s.ReachMm + FarMm).DefaultIfEmpty(0).Max();

        // Only the sharp edge of a small lamp's shadow needs a fine grid.
        var step = geometry.IsCasting ? 0.8 : lamps.Any(IsHard) ? 0.25 : 0.5;
        perMm = 1 / step;
        (width, height) = ((int)((right - left) / step) + 2, (int)((bottom - top) / step) + 2);
        (width, height) = (Math.Max(width, 2), Math.Max(height, 2));
        sky = new float[width * height];
        clear = [.. lamps.Select(_ => new float[width * height])];
        halfWidth = [.. lamps.Select(l => IsHard(l) ? new float[width * height] : [])];
        Parallel.For(0, height, row =>
        {
            for (var column = 0; column < width; column++)
            {
                var (x, y) = (left + (column * step), top + (row * step));
                var at = (row * width) + column;
                sky[at] = (float)SkyAt(x, y);
                for (var k = 0; k < lamps.Count; k++)
                {
                    if (IsHard(lamps[k]))
                    {
                        (clear[k][at], halfWidth[k][at]) = ClearWayToLamp(x, y, geometry.BaseMm, lamps[k], 0, 0, -1);
                    }
                    else
                    {
                        clear[k][at] = SeenOfLamp(x, y, lamps[k]);
                    }
                }
            }
        });
    }

    public static bool IsHard(SceneLamp lamp) => lamp.RadiusMm <= 10;

    /// <summary>The share of the sky seen from a place on the table.</summary>
    public float Sky(double x, double y) => Locate(x, y, out var at, out var fx, out var fy) ? Read(sky, at, fx, fy) : 1;

    /// <summary>The share of a lamp seen from a place on the table.</summary>
    public float Seen(int lamp, double x, double y)
    {
        if (!Locate(x, y, out var at, out var fx, out var fy))
        {
            return 1;
        }

        var value = Read(clear[lamp], at, fx, fy);
        return halfWidth[lamp].Length == 0 ? value : Share(value, Read(halfWidth[lamp], at, fx, fy));
    }

    /// <summary>The share of a lamp that passes a body's edge with this clearance, the penumbra being this half width.</summary>
    public static float Share(float clearMm, float halfWidthMm)
    {
        var t = Math.Clamp(0.5f + (0.5f * clearMm / halfWidthMm), 0, 1);
        return t * t * (3 - (2 * t));
    }

    /// <summary>The least clearance on the way to a point of a lamp, and the half width of its penumbra, mm.</summary>
    public (float ClearMm, float HalfWidthMm) ClearWayToLamp(double x, double y, double h, SceneLamp lamp, double offsetX, double offsetY, int except)
    {
        var rise = lamp.HeightMm - h;
        var (vx, vy) = ((lamp.XMm + offsetX - x) / rise, (lamp.YMm + offsetY - y) / rise);
        var (least, leastRise) = (100.0, 1.0);
        for (var k = 0; k < geometry.Solids.Length; k++)
        {
            var s = geometry.Solids[k];
            var way = s.TopMm - h;
            if (k == except || way <= 0)
            {
                continue;
            }

            var (ux, uy, wx, wy) = (vx * way, vy * way, s.Top.CentreX - x, s.Top.CentreY - y);
            var along = Math.Clamp(((ux * wx) + (uy * wy)) / ((ux * ux) + (uy * uy) + 1e-12), 0, 1);
            var (dx, dy) = (wx - (along * ux), wy - (along * uy));
            if ((dx * dx) + (dy * dy) > (s.ReachMm + 3) * (s.ReachMm + 3))
            {
                continue;
            }

            // A place under the body borrows the light from its rim, lest the grid mix it into what is seen beside it.
            var (fromX, fromY) = (x, y);
            var under = s.Clearance(x, y, h);
            if (under < 0)
            {
                var (nx, ny) = s.Top.OutwardAt(x - (s.LeanX * way), y - (s.LeanY * way));
                (fromX, fromY) = (x - (nx * under), y - (ny * under));
            }

            // Not from the place itself: a wall beside it that does not rise into the way casts no shadow.
            for (var n = 1; n <= PathSamples; n++)
            {
                var up = way * n / PathSamples;
                var c = s.Clearance(fromX + (vx * up), fromY + (vy * up), h + up);
                if (c < least)
                {
                    (least, leastRise) = (c, up);
                }
            }
        }

        return ((float)least, (float)Math.Max(0.05, leastRise * lamp.RadiusMm / rise));
    }

    private float Read(float[] map, int at, float fx, float fy)
    {
        var upper = map[at] + (fx * (map[at + 1] - map[at]));
        var lower = map[at + width] + (fx * (map[at + width + 1] - map[at + width]));
        return upper + (fy * (lower - upper));
    }

    private bool Locate(double x, double y, out int at, out float fx, out float fy)
    {
        var (gx, gy) = ((x - left) * perMm, (y - top) * perMm);
        (at, fx, fy) = (0, 0, 0);
        if (!(gx >= 0 && gy >= 0 && gx < width - 1 && gy < height - 1))
        {
            return false;
        }

        var (ix, iy) = ((int)gx, (int)gy);
        (at, fx, fy) = ((iy * width) + ix, (float)(gx - ix), (float)(gy - iy));
        return true;
    }

    private float SeenOfLamp(double x, double y, SceneLamp lamp)
    {
        var seen = 0f;
        var spacing = (float)(lamp.RadiusMm / Math.Sqrt(SoftSamples));
        for (var k = 0; k < SoftSamples; k++)
        {
            // Points spread evenly over the disc along Fermat's spiral.
            var radius = lamp.RadiusMm * Math.Sqrt((k + 0.5) / SoftSamples);
            var (sin, cos) = Math.SinCos(k * 2.399963229728653);
            var (c, w) = ClearWayToLamp(x, y, geometry.BaseMm, lamp, radius * cos, radius * sin, -1);
            if (k == 0 && c > 99)
            {
                // Nothing near the middle ray: look at the rim only before giving up on shadows.
                if (IsFarFromAll(x, y, lamp))
                {
                    return 1;
                }
            }

            seen += Share(c, Math.Max(w * spacing / (float)lamp.RadiusMm, 0.1f));
        }

        return seen / SoftSamples;
    }

    private bool IsFarFromAll(double x, double y, SceneLamp lamp)
    {
        var rise = lamp.HeightMm - geometry.BaseMm;
        foreach (var s in geometry.Solids)
        {
            var up = s.TopMm - geometry.BaseMm;
            var (mx, my) = ((lamp.XMm - x) * up / rise / 2, (lamp.YMm - y) * up / rise / 2);
            var (dx, dy) = (s.Top.CentreX - x - mx, s.Top.CentreY - y - my);
            var reach = s.ReachMm + 3 + Math.Sqrt((mx * mx) + (my * my)) + (up * lamp.RadiusMm / rise);
            if ((dx * dx) + (dy * dy) < reach * reach)
            {
                return false;
            }
        }

        return true;
    }

    // A long wall of height T at distance d hides (1 - d / sqrt(d² + T²)) / 2 of an even sky, weighted by the cosine.
    private double SkyAt(double x, double y)
    {
        double share = 1;
        foreach (var s in geometry.Solids)
        {
            var t = s.TopMm - geometry.BaseMm;
            var (cx, cy) = (s.Top.CentreX - x, s.Top.CentreY - y);
            if ((cx * cx) + (cy * cy) > (s.ReachMm + (6 * t)) * (s.ReachMm + (6 * t)))
            {
                continue;
            }

            var d = Math.Max(0, s.Clearance(x, y, geometry.BaseMm));
            share *= 1 - (0.5 * (1 - (d / Math.Sqrt((d * d) + (t * t)))));
        }

        return share;
    }
}
