using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Comparison;

namespace SectionScan.Jobs.Comparing;

/// <summary>Alignments in plain words.</summary>
public static class AlignmentWords
{
    /// <summary>"best fit of x, y and turn, by Tukey's loss with an even offset, mirrored".</summary>
    /// <param name="choice">The alignment.</param>
    /// <param name="unit">What lengths are told in.</param>
    public static string Of(AlignmentChoice choice, LengthUnit unit = LengthUnit.Millimetre)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var how = choice.Method switch
        {
            SectionAlignmentMethod.AsPlaced => "as placed",
            SectionAlignmentMethod.Centroids => "centroids together",
            SectionAlignmentMethod.GuideAxis => "guide axes together, along them by the edges",
            SectionAlignmentMethod.FloorLine => "floor lines together, along them by the edges",
            SectionAlignmentMethod.Points => "marked points together",
            _ => $"best fit of {Of(choice.Rule.Freedom)}",
        };
        var loss = choice.Method is SectionAlignmentMethod.BestFit ? $", {Of(choice.Rule)}" : string.Empty;
        return how + loss + (choice.IsMirrored ? ", mirrored" : string.Empty) + (choice.ByHand.IsNone ? string.Empty : $", then aligned by hand: {choice.ByHand.InWords(unit == LengthUnit.Inch)}");
    }

    private static string Of(AlignmentFreedom freedom)
    {
        var free = new[]
        {
            (AlignmentFreedom.X, "x"), (AlignmentFreedom.Y, "y"), (AlignmentFreedom.Rotation, "turn"), (AlignmentFreedom.Scale, "size"),
        }.Where(each => freedom.HasFlag(each.Item1)).Select(each => each.Item2).ToList();
        return free.Count switch
        {
            0 => "nothing",
            1 => free[0],
            _ => string.Join(", ", free[..^1]) + " and " + free[^1],
        };
    }

    private static string Of(FitRule rule) => (rule.Loss switch
    {
        FitLoss.LeastSquares => "least squares",
        FitLoss.Absolute => "absolute distances",
        FitLoss.Huber => "Huber's loss",
        _ => "Tukey's loss",
    }) + (rule.HasEvenOffset ? " with an even offset" : string.Empty);
}
