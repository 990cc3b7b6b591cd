using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Comparison;

/// <summary>Lays a measured outline on a reference.</summary>
public static class OutlineAlignment
{
    /// <summary>Turns from which a fit with rotation starts, degrees: a section that came from a tag or a sheet is not farther off,
    /// and farther turns would let a nearly round one come to lie on its side.</summary>
    private static readonly double[] StartTurnsDegrees = [0, 7, -7, 15, -15];

    /// <summary>Lays a measured outline on a reference by one of the usual methods.</summary>
    /// <param name="reference">The reference, which stays.</param>
    /// <param name="measured">The outline to be laid on it.</param>
    /// <param name="method">How.</param>
    /// <param name="isMirrored">Exchange left and right first, about the section's y axis: a left port on a right one.</param>
    public static AlignedOutline Align(Outline reference, Outline measured, AlignmentMethod method, bool isMirrored = false)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        return method switch
        {
            AlignmentMethod.AsPlaced => Fit(reference, measured, AlignmentFreedom.None, isMirrored),
            AlignmentMethod.Centroids => AtCentroids(reference, measured, SimilarityTransform.Identity with { IsMirrored = isMirrored }),
            AlignmentMethod.BestFit => Fit(reference, measured, AlignmentFreedom.X | AlignmentFreedom.Y, isMirrored),
            AlignmentMethod.BestFitWithRotation => Fit(
                reference, measured, AlignmentFreedom.X | AlignmentFreedom.Y | AlignmentFreedom.Rotation, isMirrored),
            _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Unknown alignment method."),
        };
    }

    /// <summary>Lays a measured outline on a reference to the least root mean square distance of its edge from the reference's edge,
    /// changing only what is free.</summary>
    /// <param name="reference">The reference, which stays.</param>
    /// <param name="measured">The outline to be laid on it.</param>
    /// <param name="freedom">What the fit may change.</param>
    /// <param name="isMirrored">Exchange left and right first, about the section's y axis.</param>
    /// <returns>The best of the fits from several starts: the centroids together as far as moves are free, areas alike when scale
    /// is free, a few small turns when rotation is free.</returns>
    public static AlignedOutline Fit(Outline reference, Outline measured, AlignmentFreedom freedom, bool isMirrored = false)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        return Fit(reference, measured, new FitRule(freedom), SimilarityTransform.Identity with { IsMirrored = isMirrored });
    }

    /// <summary>Lays a measured outline on a reference to the least loss of the distances of its edge from the reference's edge.</summary>
    /// <param name="reference">The reference, which stays.</param>
    /// <param name="measured">The outline to be laid on it.</param>
    /// <param name="rule">What the fit may change, and how distances count.</param>
    /// <param name="first">A motion done before the fit: a mirror image, or none. What is not free stays as it puts it.</param>
    /// <returns>The best of the fits from several starts. A robust loss is judged, in all of them, by the spread that the best fit to
    /// absolute distances leaves; a loss of Tukey's kind starts there too, since it has many minima.</returns>
    public static AlignedOutline Fit(Outline reference, Outline measured, FitRule rule, SimilarityTransform first)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(first);
        var freedom = rule.Freedom;
        if (freedom == AlignmentFreedom.None)
        {
            return Moved(measured, first);
        }

        double[] turns = freedom.HasFlag(AlignmentFreedom.Rotation) ? StartTurnsDegrees : [0];
        var starts = turns.Select(turn => Start(reference, measured, freedom, Angle.FromDegrees(turn), first));
        var coarse = new ClosestEdgeFit(reference, measured, rule with { Loss = rule.Loss == FitLoss.LeastSquares ? rule.Loss : FitLoss.Absolute });
        var best = starts.Select(start => coarse.From(start, 1, first.Turn)).MinBy(result => result.Loss)!;
        if (rule.Loss is FitLoss.Huber or FitLoss.Tukey)
        {
            var fine = new ClosestEdgeFit(reference, measured, rule);
            best = fine.From(best.Transform, fine.ScaleAt(best.Transform), first.Turn);
        }

        return Moved(measured, best.Transform) with { EvenOffsetMm = best.EvenOffsetMm };
    }

    /// <summary>Lays centroid on centroid, not turned.</summary>
    /// <param name="reference">The reference, which stays.</param>
    /// <param name="measured">The outline to be laid on it.</param>
    /// <param name="first">A motion done before: a mirror image, or none.</param>
    public static AlignedOutline AtCentroids(Outline reference, Outline measured, SimilarityTransform first)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentNullException.ThrowIfNull(first);
        return Moved(measured, Start(reference, measured, AlignmentFreedom.X | AlignmentFreedom.Y, default, first));
    }

    private static SimilarityTransform Start(
        Outline reference, Outline measured, AlignmentFreedom freedom, Angle turn, SimilarityTransform first)
    {
        var (target, own) = (PolygonMoments.Of(reference.Points), PolygonMoments.Of(measured.Points));
        var scale = freedom.HasFlag(AlignmentFreedom.Scale) ? Math.Sqrt(target.AreaMm2 / own.AreaMm2) : 1;
        var start = first with { Turn = first.Turn + turn, Scale = first.Scale * scale };
        var centroid = start.Apply(own.Centroid);
        return start with
        {
            XMm = start.XMm + (freedom.HasFlag(AlignmentFreedom.X) ? target.Centroid.XMm - centroid.XMm : 0),
            YMm = start.YMm + (freedom.HasFlag(AlignmentFreedom.Y) ? target.Centroid.YMm - centroid.YMm : 0),
        };
    }

    private static AlignedOutline Moved(Outline measured, SimilarityTransform transform) => new(transform.Apply(measured), transform);
}
