using System.Text.Json.Serialization;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Jobs.Comparing;

/// <summary>A comparison as one document for programs. Lengths in mm, areas in mm², angles in degrees.</summary>
/// <param name="Schema">Its schema's name.</param>
/// <param name="Reference">The reference's name.</param>
/// <param name="Measured">The measured section's name.</param>
/// <param name="Alignment">How they were laid on each other.</param>
/// <param name="Mirrored">True when the measured one was mirrored left for right.</param>
/// <param name="Sign">What the sign of a deviation means.</param>
/// <param name="Motion">How the measured one was moved: mirrored first, then turned, then shifted.</param>
/// <param name="Area">The areas.</param>
/// <param name="Deviation">The deviations' figures.</param>
/// <param name="Regions">The same for each side.</param>
/// <param name="Likeness">Figures of likeness.</param>
/// <param name="Measures">Area, width and height of both, and the measured one's less the reference's.</param>
/// <param name="ByHand">How it was moved by hand after the alignment; null when it was not.</param>
/// <param name="Samples">The deviations one by one: x, y, direction, deviation.</param>
public sealed record ComparisonAnswer(
    string Schema, string Reference, string Measured, string Alignment, bool Mirrored, string Sign,
    ComparisonAnswer.MotionPart Motion, ComparisonAnswer.AreaPart Area, ComparisonAnswer.DeviationPart Deviation,
    IReadOnlyList<ComparisonAnswer.RegionPart> Regions, ComparisonAnswer.LikenessPart Likeness,
    SortedDictionary<string, ComparisonAnswer.MeasurePart> Measures, ComparisonAnswer.HandPart? ByHand, IReadOnlyList<double[]> Samples)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/compare/1";

    /// <summary>Makes the answer.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="alignment">The alignment in the command line's word.</param>
    public static ComparisonAnswer Of(SectionComparison comparison, string alignment)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var result = comparison.Result;
        var (referenceMm2, measuredMm2) = comparison.AreasMm2;
        var transform = result.Measured.Transform;
        double? expanded = double.IsNaN(comparison.DeviationExpandedUncertaintyMm) ? null : comparison.DeviationExpandedUncertaintyMm;
        return new(
            SchemaName, comparison.Reference.Name, comparison.Measured.Name, alignment, comparison.Alignment.IsMirrored,
            "+ where the measured wall lies outside the reference (metal already gone), - where metal is left",
            new(transform.XMm, transform.YMm, transform.Turn.Degrees, transform.Scale, result.Measured.EvenOffsetMm),
            new(referenceMm2, measuredMm2, result.AreaDifferenceMm2),
            new(result.MeanDeviationMm, result.RmsDeviationMm, ExtremePart.Of(result.Highest), ExtremePart.Of(result.Lowest), expanded,
                expanded is null ? null : comparison.IsWithinUncertainty),
            [.. result.Regions.Select(r => new RegionPart(RegionWords.Of(r.Region), r.MeanMm, r.LowestMm, r.HighestMm, r.LengthMm, r.GoneMm3PerMm, r.LeftMm3PerMm))],
            new(result.IntersectionOverUnion, result.HausdorffMm, result.Hausdorff95Mm, result.DiscreteFrechetMm, result.Procrustes.FullDistance),
            new(comparison.Measures.ToDictionary(each => each.Measure.Name, MeasurePart.Of), StringComparer.Ordinal),
            comparison.Alignment.ByHand is { IsNone: false } move ? new(move.XMm, move.YMm, move.TurnDeg) : null,
            [.. result.Samples.Select(s => new[] { s.Reference.XMm, s.Reference.YMm, s.Direction.Degrees, s.DeviationMm })]);
    }

    /// <summary>How the measured section was moved, and the even offset that the fit allowed for.</summary>
    public sealed record MotionPart(double XMm, double YMm, double TurnDeg, double Scale, double EvenOffsetMm);

    /// <summary>One measure of both sections.</summary>
    public sealed record MeasurePart(ValuePart Reference, ValuePart Measured, ValuePart Difference, string Unit)
    {
        internal static MeasurePart Of(MeasureDifference each) => new(
            ValuePart.Of(each.Reference, each.IsErrorKnown), ValuePart.Of(each.Measured, each.IsErrorKnown), ValuePart.Of(each.Difference, each.IsErrorKnown), each.Unit);
    }

    /// <summary>A value with its u, and its U with k = 2; both null when not known.</summary>
    public sealed record ValuePart(
        double Value, [property: JsonPropertyName("u")] double? StandardU, [property: JsonPropertyName("U")] double? ExpandedU)
    {
        internal static ValuePart Of(Estimate estimate, bool isKnown) => new(
            estimate.Value, isKnown ? estimate.StandardUncertainty : null, isKnown ? estimate.ExpandedUncertainty : null);
    }

    /// <summary>A move by hand: to the right and up, then counter-clockwise about the section's own centroid.</summary>
    public sealed record HandPart(double XMm, double YMm, double TurnDeg);

    /// <summary>The areas.</summary>
    public sealed record AreaPart(double ReferenceMm2, double MeasuredMm2, double DifferenceMm2);

    /// <summary>The deviations' figures; U with k = 2, null when not known.</summary>
    public sealed record DeviationPart(
        double MeanMm, double RmsMm, ExtremePart Highest, ExtremePart Lowest, double? ExpandedUncertaintyMm, bool? IsWithinUncertainty);

    /// <summary>One extreme and where it is.</summary>
    public sealed record ExtremePart(double DeviationMm, double XMm, double YMm, double DirectionDeg, string Region)
    {
        internal static ExtremePart Of(DeviationSample sample) => new(
            sample.DeviationMm, sample.Reference.XMm, sample.Reference.YMm, sample.Direction.Degrees, RegionWords.Of(sample.Region));
    }

    /// <summary>One side's figures; metal in mm³ for each mm of port.</summary>
    public sealed record RegionPart(
        string Region, double MeanMm, double LowestMm, double HighestMm, double LengthMm, double GoneMm3PerMm, double LeftMm3PerMm);

    /// <summary>Figures of likeness.</summary>
    public sealed record LikenessPart(
        double IntersectionOverUnion, double HausdorffMm, double Hausdorff95Mm, double DiscreteFrechetMm, double ProcrustesDistance);
}
