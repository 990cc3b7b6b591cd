using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Tests.Likeness;

/// <summary>Closed shapes as many-cornered polygons.</summary>
internal static class Shapes
{
    public static Outline Circle(double radiusMm, int count = 720) => Ellipse(radiusMm, radiusMm, count);

    public static Outline Ellipse(double semiXMm, double semiYMm, int count = 720) => Polar(count, angle =>
        new(semiXMm * Math.Cos(angle), semiYMm * Math.Sin(angle)));

    public static Outline Polygon(params (double X, double Y)[] corners) =>
        Outline.From(corners.Select(c => new SectionPoint(c.X, c.Y))).ValueOrThrow();

    /// <summary>A smooth blob like a port: an ellipse of 15 to 25 by 11 to 19 mm with gentle lobes up to order 5.</summary>
    public static Outline Blob(Random random, int count = 400)
    {
        var (semiX, semiY) = (15 + (10 * random.NextDouble()), 11 + (8 * random.NextDouble()));
        var lobes = Enumerable.Range(2, 4).Select(k => (Order: k, Size: 0.12 * random.NextDouble() / k, Phase: 2 * Math.PI * random.NextDouble())).ToArray();
        return Polar(count, angle =>
        {
            var radius = 1 + lobes.Sum(lobe => lobe.Size * Math.Cos((lobe.Order * angle) + lobe.Phase));
            return new(semiX * radius * Math.Cos(angle), semiY * radius * Math.Sin(angle));
        });
    }

    /// <summary>The same outline beginning at another corner.</summary>
    public static Outline Begun(Outline outline, int first)
    {
        var points = outline.Points.ToArray();
        return Outline.From([.. points[first..], .. points[..first]]).ValueOrThrow();
    }

    private static Outline Polar(int count, Func<double, SectionPoint> at) =>
        Outline.From(Enumerable.Range(0, count).Select(i => at(2 * Math.PI * i / count))).ValueOrThrow();
}
