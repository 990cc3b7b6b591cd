using SectionScan.Metrology.Frames;

namespace SectionScan.Porting.Lengthwise;

/// <summary>A straight line through points by least squares of the distances.</summary>
/// <param name="Middle">The points' middle, mm.</param>
/// <param name="X">x of its unit direction.</param>
/// <param name="Y">y of its unit direction.</param>
/// <param name="ResidualRmsMm">The root mean square distance of the points, mm.</param>
internal sealed record FittedLine(SectionPoint Middle, double X, double Y, double ResidualRmsMm)
{
    public static FittedLine? Of(IReadOnlyList<SectionPoint> points)
    {
        if (points.Count < 5)
        {
            return null;
        }

        var middle = new SectionPoint(points.Average(p => p.XMm), points.Average(p => p.YMm));
        var xx = points.Average(p => (p.XMm - middle.XMm) * (p.XMm - middle.XMm));
        var yy = points.Average(p => (p.YMm - middle.YMm) * (p.YMm - middle.YMm));
        var xy = points.Average(p => (p.XMm - middle.XMm) * (p.YMm - middle.YMm));
        var (sin, cos) = Math.SinCos(Math.Atan2(2 * xy, xx - yy) / 2);
        var line = new FittedLine(middle, cos, sin, 0);
        return line with { ResidualRmsMm = Math.Sqrt(points.Average(p => line.Beside(p) * line.Beside(p))) };
    }

    /// <summary>How far a place lies to the left of the line, mm.</summary>
    public double Beside(SectionPoint p) => ((p.YMm - Middle.YMm) * X) - ((p.XMm - Middle.XMm) * Y);
}
