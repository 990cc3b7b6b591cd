using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Schedules;

/// <summary>One place of a comparison.</summary>
/// <param name="At">The place: mm, or share of the length.</param>
/// <param name="ReferenceMm2">The reference's area.</param>
/// <param name="MeasuredMm2">The measured port's area.</param>
public sealed record ScheduleDifference(double At, Estimate ReferenceMm2, Estimate MeasuredMm2)
{
    /// <summary>Measured less reference, mm²; both taken as independent, which is rather too large an uncertainty.</summary>
    public Estimate DifferenceMm2 => new(
        MeasuredMm2.Value - ReferenceMm2.Value, double.Hypot(MeasuredMm2.StandardUncertainty, ReferenceMm2.StandardUncertainty));

    /// <summary>The same in percent of the reference.</summary>
    public Estimate DifferencePercent => DifferenceMm2.Scaled(100 / ReferenceMm2.Value);

    /// <summary>True when the difference is larger than its expanded uncertainty.</summary>
    public bool IsSure => Math.Abs(DifferenceMm2.Value) > DifferenceMm2.ExpandedUncertainty;
}

/// <summary>Two schedules resampled at the same places.</summary>
/// <param name="Reference">The reference's name.</param>
/// <param name="Measured">The measured port's name.</param>
/// <param name="Axis">What they are laid against each other by.</param>
/// <param name="Samples">The places in order.</param>
public sealed record ScheduleComparison(string Reference, string Measured, ScheduleAxis Axis, IReadOnlyList<ScheduleDifference> Samples)
{
    /// <summary>The number of places compared.</summary>
    public const int SampleCount = 101;

    // Less in common than this is no comparison.
    private const double LeastOverlapMm = 1;

    /// <summary>The place where the measured port is largest against the reference.</summary>
    public ScheduleDifference Largest => Samples.MaxBy(sample => sample.DifferencePercent.Value)!;

    /// <summary>The place where it is smallest.</summary>
    public ScheduleDifference Smallest => Samples.MinBy(sample => sample.DifferencePercent.Value)!;

    /// <summary>Mean difference in percent of the reference.</summary>
    public double MeanPercent => Samples.Average(sample => sample.DifferencePercent.Value);

    /// <summary>Compares two schedules.</summary>
    /// <param name="reference">The reference: an exemplar, a target.</param>
    /// <param name="measured">The port looked at.</param>
    /// <param name="axis">By distance or by share of the length.</param>
    /// <returns>The comparison, or <c>schedules-apart</c> when by distance they have no stretch in common.</returns>
    public static Result<ScheduleComparison> Of(AreaSchedule reference, AreaSchedule measured, ScheduleAxis axis)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        if (axis == ScheduleAxis.Share)
        {
            return new ScheduleComparison(reference.Name, measured.Name, axis, [.. Places(0, 1).Select(share =>
                new ScheduleDifference(share, reference.AreaMm2AtShare(share), measured.AreaMm2AtShare(share)))]);
        }

        var (from, to) = (Math.Max(reference.FromMm, measured.FromMm), Math.Min(reference.ToMm, measured.ToMm));
        return to - from < LeastOverlapMm
            ? ScheduleProblems.Apart(measured.Name, reference.Name, from, to)
            : new ScheduleComparison(reference.Name, measured.Name, axis, [.. Places(from, to).Select(at =>
                new ScheduleDifference(at, reference.AreaMm2At(at), measured.AreaMm2At(at)))]);
    }

    private static IEnumerable<double> Places(double from, double to) =>
        Enumerable.Range(0, SampleCount).Select(i => from + ((to - from) * i / (SampleCount - 1)));
}
