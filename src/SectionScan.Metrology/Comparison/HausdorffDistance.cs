using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Comparison;

/// <summary>The Hausdorff distance: how far the worst point of either shape is from the other shape. Counts whole edges, not corners
/// only. Unit: mm.</summary>
/// <remarks>D. P. Huttenlocher, G. A. Klanderman, W. J. Rucklidge, "Comparing images using the Hausdorff distance", 1993 (cited from
/// memory). An edge is halved until it cannot hide a worse point: the distance to one edge of the other shape is convex along it, so
/// that it is nowhere larger than at the two ends.</remarks>
public static class HausdorffDistance
{
    /// <summary>The result may be too small by this much, mm: a thousandth of what a photo can tell.</summary>
    public const double ToleranceMm = 1e-6;

    /// <summary>The larger of the two directed distances between open polylines of two or more points, mm.</summary>
    public static double Between(ReadOnlySpan<SectionPoint> first, ReadOnlySpan<SectionPoint> second) =>
        Between(new EdgeIndex(first, isClosed: false), new EdgeIndex(second, isClosed: false));

    /// <summary>The larger of the two directed distances between outlines, mm.</summary>
    public static double Between(Outline first, Outline second) => Between(Edges(first), Edges(second));

    /// <summary>The largest distance from a place on <paramref name="from"/> to the nearest one on <paramref name="to"/>, both open
    /// polylines, mm.</summary>
    public static double Directed(ReadOnlySpan<SectionPoint> from, ReadOnlySpan<SectionPoint> to) =>
        Directed(new EdgeIndex(from, isClosed: false), new EdgeIndex(to, isClosed: false));

    /// <summary>The distance that all but a share of either outline keeps to the other: less ruled by one bad point. The larger of
    /// the two directions.</summary>
    /// <param name="first">One outline.</param>
    /// <param name="second">The other outline.</param>
    /// <param name="share">The share of the outline's length that lies within the distance, over 0 to 1; 0.95 is usual.</param>
    /// <param name="spacingMm">The spacing of the places asked, mm.</param>
    public static double Percentile(Outline first, Outline second, double share = 0.95, double spacingMm = 0.25)
    {
        if (!(share > 0 && share <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share lies over 0 and up to 1.");
        }

        return Math.Max(
            DirectedPercentile(first, Edges(second), share, spacingMm), DirectedPercentile(second, Edges(first), share, spacingMm));
    }

    internal static double Between(EdgeIndex first, EdgeIndex second) => Math.Max(Directed(first, second), Directed(second, first));

    private static double DirectedPercentile(Outline from, EdgeIndex to, double share, double spacingMm)
    {
        var distances = Array.ConvertAll(OutlineSampling.Even(from, spacingMm), point => to.Nearest(point).DistanceMm);
        Array.Sort(distances);
        return distances[(int)Math.Ceiling(share * distances.Length) - 1];
    }

    private static EdgeIndex Edges(Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return new(outline.Points, isClosed: true);
    }

    private static double Directed(EdgeIndex from, EdgeIndex to)
    {
        var worst = 0.0;
        for (var edge = 0; edge < from.EdgeCount; edge++)
        {
            worst = Math.Max(worst, to.Nearest(from.From(edge)).DistanceMm);
            worst = Math.Max(worst, to.Nearest(from.To(edge)).DistanceMm);
        }

        var open = new Stack<(SectionPoint A, SectionPoint B)>();
        for (var edge = 0; edge < from.EdgeCount; edge++)
        {
            open.Push((from.From(edge), from.To(edge)));
            while (open.TryPop(out var piece))
            {
                var (nearA, nearB) = (to.Nearest(piece.A), to.Nearest(piece.B));
                worst = Math.Max(worst, Math.Max(nearA.DistanceMm, nearB.DistanceMm));
                if (Math.Min(Bound(piece, nearA.Edge), Bound(piece, nearB.Edge)) > worst + ToleranceMm)
                {
                    var middle = new SectionPoint((piece.A.XMm + piece.B.XMm) / 2, (piece.A.YMm + piece.B.YMm) / 2);
                    open.Push((piece.A, middle));
                    open.Push((middle, piece.B));
                }
            }
        }

        return worst;

        double Bound((SectionPoint A, SectionPoint B) piece, int edge) =>
            Math.Max(to.FootOn(edge, piece.A).DistanceMm, to.FootOn(edge, piece.B).DistanceMm);
    }
}
