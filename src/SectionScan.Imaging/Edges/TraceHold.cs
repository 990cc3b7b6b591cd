using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Edges;

/// <summary>Holds readings to the trace. The trace leaves the face at its first edge and is right to about a pixel; a reading that follows the
/// stronger rim of a shadow close by would take the curve along, round after round.</summary>
internal static class TraceHold
{
    private const double PlayPx = 1.5;
    private const double PlayBlurs = 1.25;

    /// <summary>The readings, each moved back to within the play about the trace and then counted as less sure.</summary>
    /// <param name="readings">Readings on the curve.</param>
    /// <param name="curve">The curve they were read on.</param>
    /// <param name="traced">The trace.</param>
    /// <param name="strips">Width of wall that shows, mm: so much farther in the face's edge may be where the trace took the wall's foot.</param>
    /// <param name="pixelMm">Side of a pixel.</param>
    /// <param name="blurMm">The blur.</param>
    /// <param name="direction">+1 for a slice, −1 for an opening.</param>
    public static EdgeReading[] Hold(
        EdgeReading[] readings, ClosedCurve curve, ClosedCurve traced, ReadOnlySpan<double> strips, double pixelMm, double blurMm, int direction)
    {
        var play = Math.Max(PlayPx * pixelMm, PlayBlurs * blurMm);
        var held = new EdgeReading[readings.Length];
        double[] offs = [.. curve.Points.Select((p, i) => direction * OffTrace(traced, p, curve.Normals[i]))];

        // Where most of the outline was read off the trace, as at the round rim of a coin, it is the trace that is off.
        var usual = offs.Select((off, i) => off + readings[i].OffsetMm).Order().ElementAt(offs.Length / 2);
        for (var i = 0; i < held.Length; i++)
        {
            var off = offs[i] - usual;
            var within = Math.Clamp(readings[i].OffsetMm, -play - strips[i] - off, play - off);
            var excess = Math.Abs(readings[i].OffsetMm - within);
            held[i] = excess > 0
                ? readings[i] with { OffsetMm = within, StandardUncertaintyMm = Math.Max(readings[i].StandardUncertaintyMm, excess) }
                : readings[i];
        }

        return held;
    }

    /// <summary>How far outward of the trace a point lies, mm.</summary>
    private static double OffTrace(ClosedCurve traced, TargetPoint point, (double X, double Y) normal)
    {
        var nearest = traced.NearestTo(point);
        return ((point.XMm - nearest.XMm) * normal.X) + ((point.YMm - nearest.YMm) * normal.Y);
    }
}
