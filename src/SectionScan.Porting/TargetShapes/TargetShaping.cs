using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.TargetShapes;

/// <summary>Makes a target shape: between the own section and the one worked toward, within limits, fair.</summary>
public static class TargetShaping
{
    /// <summary>A reference more than a quarter larger or smaller is of another port.</summary>
    private const double SmallestScale = 0.8;
    private const double LargestScale = 1.25;

    /// <summary>A wish is met within this share of it.</summary>
    private const double Agreement = 2e-5;

    /// <summary>A wish farther off than this share is missed.</summary>
    private const double MissedShare = 1e-3;

    /// <summary>Makes a target shape.</summary>
    /// <param name="order">What is wanted.</param>
    /// <returns>The target, never inside the own wall; or <c>target-shape-crosses-itself</c>.</returns>
    public static Result<TargetShape> Shape(TargetShapeOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var attempt = new TargetAttempt(order);
        var scale = order.Wanted is { } wanted ? ScaleFor(attempt, order, wanted) : order.ReferenceScale;
        var (faired, offsets) = attempt.At(scale);
        if (!Outline.From(offsets.Corners(attempt.Base), "target shape").TryGet(out var outline, out _))
        {
            return TargetShapeProblems.CrossesItself();
        }

        double? missed = order.Wanted is { } wish && Math.Abs(TargetLimits.Measured(wish.Kind, outline.Points) - wish.Value) > MissedShare * wish.Value
            ? TargetLimits.Measured(wish.Kind, outline.Points)
            : null;
        return new TargetShape(outline, offsets.Reports(attempt.Base), scale, faired, missed);
    }

    /// <summary>The factor of size of the reference at which the target measures what is wanted; the nearest that limits and own metal
    /// allow. A measure never falls as the factor grows, so that halving finds it.</summary>
    private static double ScaleFor(TargetAttempt attempt, TargetShapeOrder order, (LimitedMeasure Kind, double Value) wanted)
    {
        var (low, high) = (SmallestScale * order.ReferenceScale, LargestScale * order.ReferenceScale);
        double scale;
        do
        {
            scale = (low + high) / 2;
            var measured = TargetLimits.Measured(wanted.Kind, attempt.At(scale).Offsets.Corners(attempt.Base));
            if (Math.Abs(measured - wanted.Value) < Agreement * wanted.Value)
            {
                return scale;
            }

            (low, high) = measured < wanted.Value ? (scale, high) : (low, scale);
        }
        while (high - low > 1e-5);
        return scale;
    }
}
