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
            AlignmentMethod.Centroids => AtCentroids(reference, measured, isMirrored),
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
        if (freedom == AlignmentFreedom.None)
        {
            return Moved(measured, SimilarityTransform.Identity with { IsMirrored = isMirrored });
        }

        var fit = new ClosestEdgeFit(reference, measured, freedom);
        double[] turns = freedom.HasFlag(AlignmentFreedom.Rotation) ? StartTurnsDegrees : [0];
        var best = turns
            .Select(turn => fit.From(Start(reference, measured, freedom, Angle.FromDegrees(turn), isMirrored)))
            .MinBy(result => result.MeanSquareMm2);
        return Moved(measured, best.Transform);
    }

    private static AlignedOutline AtCentroids(Outline reference, Outline measured, bool isMirrored) => Moved(
        measured, Start(reference, measured, AlignmentFreedom.X | AlignmentFreedom.Y, default, isMirrored));

    private static SimilarityTransform Start(
        Outline reference, Outline measured, AlignmentFreedom freedom, Angle turn, bool isMirrored)
    {
        var (target, own) = (PolygonMoments.Of(reference.Points), PolygonMoments.Of(measured.Points));
        var scale = freedom.HasFlag(AlignmentFreedom.Scale) ? Math.Sqrt(target.AreaMm2 / own.AreaMm2) : 1;
        var start = new SimilarityTransform(0, 0, turn, scale, isMirrored);
        var centroid = start.Apply(own.Centroid);
        return start with
        {
            XMm = freedom.HasFlag(AlignmentFreedom.X) ? target.Centroid.XMm - centroid.XMm : 0,
            YMm = freedom.HasFlag(AlignmentFreedom.Y) ? target.Centroid.YMm - centroid.YMm : 0,
        };
    }

    private static AlignedOutline Moved(Outline measured, SimilarityTransform transform) => new(transform.Apply(measured), transform);
}
