using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Porting.TargetShapes;

/// <summary>How far out limits let a wall go.</summary>
internal static class TargetLimits
{
    /// <summary>Walls that face a limit less squarely than this are bounded by their neighbours.</summary>
    private const double LeastFacing = 0.05;

    /// <summary>The measure that a limit is set on, mm or mm².</summary>
    public static double Measured(LimitedMeasure kind, ReadOnlySpan<SectionPoint> corners)
    {
        if (kind == LimitedMeasure.Area)
        {
            return PolygonMoments.SignedAreaMm2(corners);
        }

        var (low, high) = Extent(kind, corners);
        return high - low;
    }

    /// <summary>The most offset at each place so that the extent stays within a limit: the window is laid so that both sides give up the
    /// same share of their cut.</summary>
    public static double[] OfExtent(FairBase line, double[] wished, ShapeLimit limit)
    {
        var (low, high) = Extent(limit.Kind, line.At(wished));
        var own = Extent(limit.Kind, line.At(line.OwnMm));
        var excess = Math.Max(0, high - low - limit.Most);
        var (cutLow, cutHigh) = (Math.Max(0, own.Low - low), Math.Max(0, high - own.High));
        var share = cutLow + cutHigh > 0 ? cutLow / (cutLow + cutHigh) : 0.5;
        (low, high) = (low + (excess * share), high - (excess * (1 - share)));
        return [.. wished.Select((_, i) =>
        {
            var (place, facing) = limit.Kind == LimitedMeasure.Width ? (line.At(i, 0).XMm, line.NormalX(i)) : (line.At(i, 0).YMm, line.NormalY(i));
            return excess == 0 ? double.PositiveInfinity
                : facing > LeastFacing ? (high - place) / facing
                : facing < -LeastFacing ? (low - place) / facing
                : double.PositiveInfinity;
        })];
    }

    /// <summary>The most offset at each place so that the wall keeps its distance: from the own wall outward in steps as long as the
    /// distance still to spare, which cannot pass the border.</summary>
    public static double[] OfClearance(FairBase line, double[] wished, Clearance clearance)
    {
        const double CloseMm = 1e-4;
        return [.. wished.Select((wish, i) =>
        {
            var offset = line.OwnMm[i];
            while (offset < wish)
            {
                var spare = clearance.Shape.DistanceMm(line.At(i, offset)) - clearance.LeastMm;
                if (spare < CloseMm)
                {
                    return offset;
                }

                offset += spare;
            }

            return double.PositiveInfinity;
        })];
    }

    private static (double Low, double High) Extent(LimitedMeasure kind, ReadOnlySpan<SectionPoint> corners)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var corner in corners)
        {
            var value = kind == LimitedMeasure.Width ? corner.XMm : corner.YMm;
            (low, high) = (Math.Min(low, value), Math.Max(high, value));
        }

        return (low, high);
    }
}
