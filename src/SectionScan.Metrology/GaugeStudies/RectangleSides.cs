using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.GaugeStudies;

/// <summary>The widths of a rectangle between straight lines laid through the middles of its sides.</summary>
/// <param name="LongerMm">Between the sides that are farther apart, mm.</param>
/// <param name="ShorterMm">Between the others, mm.</param>
/// <param name="RoughnessMm">Root mean square of what the sides' middles stray from their lines, mm.</param>
internal sealed record RectangleSides(double LongerMm, double ShorterMm, double RoughnessMm)
{
    // The part of each side about its middle that counts: what is nearer to a corner may be rounded.
    private const double MiddleShare = 0.6;

    /// <summary>Measures an outline that is about a rectangle, turned anyhow.</summary>
    public static RectangleSides Of(Outline outline)
    {
        // The direction that the sides share: of fourfold symmetry, so each side's direction counts four times over, by its length.
        double sin4 = 0, cos4 = 0;
        for (var i = 0; i < outline.Count; i++)
        {
            var (dx, dy) = (outline[i + 1].XMm - outline[i].XMm, outline[i + 1].YMm - outline[i].YMm);
            var (sin, cos) = Math.SinCos(4 * Math.Atan2(dy, dx));
            var length = Math.Sqrt((dx * dx) + (dy * dy));
            (sin4, cos4) = (sin4 + (length * sin), cos4 + (length * cos));
        }

        var (s, c) = Math.SinCos(-Math.Atan2(sin4, cos4) / 4);
        SectionPoint[] level = [.. outline.Points.ToArray().Select(p => new SectionPoint((p.XMm * c) - (p.YMm * s), (p.XMm * s) + (p.YMm * c)))];
        var (left, right) = (level.Min(p => p.XMm), level.Max(p => p.XMm));
        var (bottom, top) = (level.Min(p => p.YMm), level.Max(p => p.YMm));
        var centre = new SectionPoint((left + right) / 2, (bottom + top) / 2);
        var (across, roughAcross) = Between(level, p => (p.XMm - centre.XMm, p.YMm - centre.YMm), MiddleShare * (top - bottom) / 2);
        var (up, roughUp) = Between(level, p => (p.YMm - centre.YMm, p.XMm - centre.XMm), MiddleShare * (right - left) / 2);
        return new(Math.Max(across, up), Math.Min(across, up), Math.Sqrt((roughAcross + roughUp) / 2));
    }

    /// <summary>The distance between two opposite sides and their mean square roughness.</summary>
    private static (double DistanceMm, double MeanSquareMm2) Between(
        SectionPoint[] points, Func<SectionPoint, (double Out, double Along)> seen, double reachMm)
    {
        var near = points.Select(seen).Where(p => Math.Abs(p.Along) < reachMm).ToArray();
        var (one, other) = (Line([.. near.Where(p => p.Out > 0)]), Line([.. near.Where(p => p.Out <= 0)]));
        var slope = (one.Slope + other.Slope) / 2;
        return ((one.At0 - other.At0) / Math.Sqrt(1 + (slope * slope)), (one.MeanSquare + other.MeanSquare) / 2);
    }

    private static (double At0, double Slope, double MeanSquare) Line((double Out, double Along)[] side)
    {
        if (side.Length < 3)
        {
            return (0, 0, double.PositiveInfinity);
        }

        var (x, y) = (side.Average(p => p.Along), side.Average(p => p.Out));
        var slope = side.Sum(p => (p.Along - x) * (p.Out - y)) / side.Sum(p => (p.Along - x) * (p.Along - x));
        return (y - (slope * x), slope, side.Average(p => Math.Pow(p.Out - y - (slope * (p.Along - x)), 2)));
    }
}
