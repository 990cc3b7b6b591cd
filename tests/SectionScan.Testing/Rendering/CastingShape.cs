using SectionScan.Metrology.Frames;

namespace SectionScan.Testing.Rendering;

/// <summary>The outline of the sawn face that carries a card and its openings: a wavy rectangle with rounded corners around them all.</summary>
internal static class CastingShape
{
    public static TargetPoint[] For(PhotoScene scene)
    {
        double left = -12, top = -12, right = 92, bottom = 62;
        foreach (var opening in scene.Openings)
        {
            foreach (var p in SceneGeometry.Placed(opening.Outline, opening.Placement))
            {
                (left, right) = (Math.Min(left, p.XMm - 14), Math.Max(right, p.XMm + 14));
                (top, bottom) = (Math.Min(top, p.YMm - 14), Math.Max(bottom, p.YMm + 14));
            }
        }

        const double Corner = 9;
        var points = new List<TargetPoint>();
        Arc(right - Corner, top + Corner, -90);
        Arc(right - Corner, bottom - Corner, 0);
        Arc(left + Corner, bottom - Corner, 90);
        Arc(left + Corner, top + Corner, 180);
        return [.. Subdivided(points).Select(Waved)];

        void Arc(double x, double y, double fromDegrees)
        {
            for (var k = 0; k <= 12; k++)
            {
                var (sin, cos) = Math.SinCos(double.DegreesToRadians(fromDegrees + (7.5 * k)));
                points.Add(new(x + (Corner * cos), y + (Corner * sin)));
            }
        }

        TargetPoint Waved(TargetPoint p) => new(
            p.XMm + (1.5 * Noise.At((p.YMm * 0.5) + scene.Seed, 7.3)), p.YMm + (1.5 * Noise.At((p.XMm * 0.5) + scene.Seed, 91.7)));
    }

    private static IEnumerable<TargetPoint> Subdivided(List<TargetPoint> corners)
    {
        for (var k = 0; k < corners.Count; k++)
        {
            var (a, b) = (corners[k], corners[(k + 1) % corners.Count]);
            var pieces = 1 + (int)a.DistanceTo(b);
            for (var n = 0; n < pieces; n++)
            {
                yield return new(a.XMm + ((b.XMm - a.XMm) * n / pieces), a.YMm + ((b.YMm - a.YMm) * n / pieces));
            }
        }
    }
}
