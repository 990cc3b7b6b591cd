using NetTopologySuite.Geometries;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Lettering;
using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Templates;

/// <summary>Finds room for lettering and centre lines within an area of metal.</summary>
internal static class TemplateLettering
{
    private const double LargestMm = 2.4;
    private const double SmallestMm = 1.1;
    private const double ShyMm = 1.2;

    /// <summary>A line of lettering as large as the metal allows at a height, or null when it would be too small to read.</summary>
    /// <param name="metal">The area to stay in.</param>
    /// <param name="text">The text.</param>
    /// <param name="middleYMm">Where the middle of its capitals is to stand.</param>
    /// <param name="xMm">A place that the lettering is to hold: the middle, unless the metal lies aside.</param>
    /// <param name="mostCapHeightMm">The largest capitals, mm.</param>
    public static TemplateText? Fitted(Geometry metal, string text, double middleYMm, double xMm = 0, double mostCapHeightMm = LargestMm)
    {
        for (var cap = mostCapHeightMm; cap >= SmallestMm; cap -= 0.1)
        {
            var (low, high) = (middleYMm - (cap / 2), middleYMm + (cap / 2));
            if (Chord(metal, low - (cap / 3), xMm) is { } below && Chord(metal, high + (cap / 3), xMm) is { } above)
            {
                var (left, right) = (Math.Max(below.Left, above.Left), Math.Min(below.Right, above.Right));
                if (right - left >= StrokeFont.WidthMm(text, cap) + (2 * ShyMm))
                {
                    return new(new((left + right) / 2, low), text, cap);
                }
            }
        }

        return null;
    }

    /// <summary>The upright and level centre lines through the origin as far as they run over metal, broken at the lettering.</summary>
    public static IEnumerable<DxfPolyline> CentreLines(Geometry metal, IEnumerable<TemplateText> texts)
    {
        const double FarMm = 1000;
        Geometry free = metal.Buffer(-ShyMm);
        foreach (var text in texts)
        {
            var half = (StrokeFont.WidthMm(text.Text, text.CapHeightMm) / 2) + ShyMm;
            free = free.Difference(Box(text.Middle.XMm - half, text.Middle.YMm - ShyMm, text.Middle.XMm + half, text.Middle.YMm + text.CapHeightMm + ShyMm));
        }

        foreach (var (x, y) in new[] { (FarMm, 0.0), (0.0, FarMm) })
        {
            var line = free.Intersection(new LineString([new(-x, -y), new(x, y)]));
            for (var i = 0; i < line.NumGeometries; i++)
            {
                if (line.GetGeometryN(i) is LineString { Length: > 0.8 } piece)
                {
                    yield return new(TemplateLayers.Centre, [.. piece.Coordinates.Select(c => new SectionPoint(c.X, c.Y))], IsClosed: false);
                }
            }
        }
    }

    /// <summary>An upright rectangle.</summary>
    public static Polygon Box(double left, double bottom, double right, double top) =>
        new(new LinearRing([new(left, bottom), new(right, bottom), new(right, top), new(left, top), new(left, bottom)]));

    /// <summary>The stretch of metal at a height that holds x.</summary>
    private static (double Left, double Right)? Chord(Geometry metal, double y, double x)
    {
        var box = metal.EnvelopeInternal;
        var cut = metal.Intersection(new LineString([new(box.MinX - 1, y), new(box.MaxX + 1, y)]));
        for (var i = 0; i < cut.NumGeometries; i++)
        {
            var stretch = cut.GetGeometryN(i).EnvelopeInternal;
            if (!stretch.IsNull && stretch.MinX <= x && x <= stretch.MaxX)
            {
                return (stretch.MinX, stretch.MaxX);
            }
        }

        return null;
    }
}
