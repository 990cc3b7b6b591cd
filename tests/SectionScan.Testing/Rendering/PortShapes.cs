using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Testing.Rendering;

/// <summary>Random smooth shapes like the cross-sections of ports: ovals, stadiums, D-shapes, waisted ones.</summary>
public static class PortShapes
{
    private const int Corners = 720;

    /// <summary>A shape 24 to 44 mm wide and high, its centroid at the origin, 720 corners at nearly even steps, counter-clockwise.</summary>
    public static SectionPoint[] Draw(Random random, double leastMm = 24, double mostMm = 44)
    {
        ArgumentNullException.ThrowIfNull(random);
        var a = Between(random, leastMm, mostMm) / 2;
        var b = Math.Clamp(a * Between(random, 0.75, 1.35), leastMm / 2, mostMm / 2);
        var radius = random.Next(4) switch
        {
            0 => SuperEllipse(a, b, Between(random, 2, 3.6)),
            1 => Stadium(a, b),
            2 => Flattened(SuperEllipse(a, b, Between(random, 2, 2.6)), b * Between(random, 0.72, 0.9)),
            _ => Waisted(SuperEllipse(a, b, Between(random, 2, 3)), Between(random, 0.02, 0.06), Between(random, 0, Math.Tau)),
        };
        var waves = Enumerable.Range(2, 5)
            .Select(n => (N: n, Size: Between(random, 0, 0.02 / n), Phase: Between(random, 0, Math.Tau))).ToArray();

        var fine = new SectionPoint[4 * Corners];
        for (var k = 0; k < fine.Length; k++)
        {
            var angle = Math.Tau * k / fine.Length;
            var r = radius(angle) * (1 + waves.Sum(w => w.Size * Math.Cos((w.N * angle) + w.Phase)));
            fine[k] = new(r * Math.Cos(angle), r * Math.Sin(angle));
        }

        var even = Outline.From(fine).ValueOrThrow().Resampled(Corners);
        var width = even.Max(p => p.XMm) - even.Min(p => p.XMm);
        var height = even.Max(p => p.YMm) - even.Min(p => p.YMm);
        var scale = Math.Min(1, mostMm / Math.Max(width, height)) * Math.Max(1, leastMm / Math.Min(width, height));
        var centroid = PolygonMoments.Of(even).Centroid;
        return Array.ConvertAll(even, p => new SectionPoint((p.XMm - centroid.XMm) * scale, (p.YMm - centroid.YMm) * scale));
    }

    internal static double Between(Random random, double from, double to) => from + (random.NextDouble() * (to - from));

    private static Func<double, double> SuperEllipse(double a, double b, double n) => angle =>
        Math.Pow(Math.Pow(Math.Abs(Math.Cos(angle)) / a, n) + Math.Pow(Math.Abs(Math.Sin(angle)) / b, n), -1 / n);

    // Two half discs joined by straight sides, by the ray's way to the far disc or side.
    private static Func<double, double> Stadium(double a, double b) => angle =>
    {
        var (half, r) = (Math.Abs(a - b), Math.Min(a, b));
        var (along, across) = a >= b
            ? (Math.Abs(Math.Cos(angle)), Math.Abs(Math.Sin(angle)))
            : (Math.Abs(Math.Sin(angle)), Math.Abs(Math.Cos(angle)));
        var toSide = across > 1e-9 ? r / across : double.MaxValue;
        return toSide * along <= half ? toSide : (half * along) + Math.Sqrt((r * r) - (half * half * across * across));
    };

    // A floor cut off below, joined softly.
    private static Func<double, double> Flattened(Func<double, double> whole, double floor) => angle =>
    {
        const double Sharpness = 14;
        var down = -Math.Sin(angle);
        return down < 0.05
            ? whole(angle)
            : Math.Pow(Math.Pow(whole(angle), -Sharpness) + Math.Pow(floor / down, -Sharpness), -1 / Sharpness);
    };

    private static Func<double, double> Waisted(Func<double, double> whole, double depth, double at) => angle =>
        whole(angle) * (1 - (depth * (Math.Exp(8 * (Math.Cos(angle - at) - 1)) + Math.Exp(8 * (Math.Cos(angle - at - Math.PI) - 1)))));
}
