using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.Comparison;

/// <summary>Lays a marked section on another as a person chose.</summary>
public static class SectionAlignment
{
    /// <summary>Lays a section on a reference.</summary>
    /// <param name="reference">The reference, which stays, and what is marked in it.</param>
    /// <param name="measured">The section to be laid on it, and what is marked in it.</param>
    /// <param name="choice">How.</param>
    /// <returns>The section as it came to lie; or <c>no-guide-axis</c>, <c>no-floor-line</c> or <c>no-points-in-both</c>.</returns>
    public static Result<AlignedOutline> Align(
        (Outline Outline, SectionMarks Marks) reference, (Outline Outline, SectionMarks Marks) measured, AlignmentChoice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return Lay(reference, measured, choice).Then<AlignedOutline>(laid => choice.ByHand.Apply(laid));
    }

    private static Result<AlignedOutline> Lay(
        (Outline Outline, SectionMarks Marks) reference, (Outline Outline, SectionMarks Marks) measured, AlignmentChoice choice)
    {
        var first = !choice.IsMirrored ? SimilarityTransform.Identity
            : measured.Marks.GuideAxis is { } axis ? SimilarityTransform.MirrorAbout(axis)
            : SimilarityTransform.Identity with { IsMirrored = true };
        return choice.Method switch
        {
            SectionAlignmentMethod.Centroids => OutlineAlignment.AtCentroids(reference.Outline, measured.Outline, first),
            SectionAlignmentMethod.BestFit => OutlineAlignment.Fit(reference.Outline, measured.Outline, choice.Rule, first),
            SectionAlignmentMethod.GuideAxis => ByLines(reference, measured, choice, first, marks => marks.GuideAxis, AlignmentProblems.NoGuideAxis),
            SectionAlignmentMethod.FloorLine => ByLines(reference, measured, choice, first, marks => marks.FloorLine, AlignmentProblems.NoFloorLine),
            SectionAlignmentMethod.Points => ByPoints(reference, measured, first),
            _ => new AlignedOutline(first.Apply(measured.Outline), first),
        };
    }

    /// <summary>One line comes to lie on the other; along the line the edges decide.</summary>
    private static Result<AlignedOutline> ByLines(
        (Outline Outline, SectionMarks Marks) reference,
        (Outline Outline, SectionMarks Marks) measured,
        AlignmentChoice choice,
        SimilarityTransform first,
        Func<SectionMarks, SectionLine?> lineOf,
        Func<string, Problem> missing)
    {
        if (lineOf(reference.Marks) is not { } still)
        {
            return missing("reference");
        }

        if (lineOf(measured.Marks) is not { } moving)
        {
            return missing("measured section");
        }

        // In a frame whose y axis is the reference's line, the fit is free along y alone.
        var upright = Angle.FromRadians((Math.PI / 2) - still.DirectionRadians);
        var here = first.Apply(moving);
        var turn = Angle.FromRadians(SmallestTurn((Math.PI / 2) - here.DirectionRadians));
        var laid = first.Then(new(0, 0, turn, 1, false));
        laid = laid.Then(new(-laid.Apply(moving.Middle).XMm, 0, default, 1, false));
        var toFrame = new SimilarityTransform(0, 0, upright, 1, false);
        toFrame = toFrame with { XMm = -toFrame.Apply(still.Middle).XMm };
        var fitted = OutlineAlignment.Fit(
            toFrame.Apply(reference.Outline), measured.Outline, choice.Rule with { Freedom = AlignmentFreedom.Y }, laid);
        var back = fitted.Transform.Then(toFrame.Inverse());
        return new AlignedOutline(back.Apply(measured.Outline), back) { EvenOffsetMm = fitted.EvenOffsetMm };
    }

    /// <summary>A line has no direction of its own: it is turned the shorter way.</summary>
    private static double SmallestTurn(double radians) => radians - (Math.PI * Math.Round(radians / Math.PI));

    private static Result<AlignedOutline> ByPoints(
        (Outline Outline, SectionMarks Marks) reference, (Outline Outline, SectionMarks Marks) measured, SimilarityTransform first)
    {
        var names = reference.Marks.Points.Keys.Where(measured.Marks.Points.ContainsKey).Order(StringComparer.Ordinal).ToList();
        if (names.Count == 0)
        {
            return AlignmentProblems.NoPointsInBoth(reference.Marks.Points.Keys, measured.Marks.Points.Keys);
        }

        var (still, moving) = (names.ConvertAll(name => reference.Marks.Points[name]), names.ConvertAll(name => first.Apply(measured.Marks.Points[name])));
        var (to, from) = (Middle(still), Middle(moving));
        double along = 0, across = 0;
        for (var i = 0; i < names.Count; i++)
        {
            var (ax, ay, bx, by) = (moving[i].XMm - from.XMm, moving[i].YMm - from.YMm, still[i].XMm - to.XMm, still[i].YMm - to.YMm);
            along += (ax * bx) + (ay * by);
            across += (ax * by) - (ay * bx);
        }

        // The rigid motion of least squares; one point alone turns nothing.
        var turn = Angle.FromRadians(along == 0 && across == 0 ? 0 : Math.Atan2(across, along));
        var turned = first.Then(new(0, 0, turn, 1, false));
        var place = new SimilarityTransform(0, 0, turn, 1, false).Apply(from);
        var laid = turned.Then(new(to.XMm - place.XMm, to.YMm - place.YMm, default, 1, false));
        return new AlignedOutline(laid.Apply(measured.Outline), laid);
    }

    private static SectionPoint Middle(List<SectionPoint> points) => new(points.Average(p => p.XMm), points.Average(p => p.YMm));
}
