using System.Globalization;
using System.Text;
using SectionScan.Drawings.Comparisons;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Comparing;

/// <summary>A section against a reference: + where the measured wall lies outside the reference (metal already gone), − where metal is
/// left.</summary>
/// <param name="Reference">The reference.</param>
/// <param name="Measured">The section compared with it.</param>
/// <param name="Alignment">How they were laid on each other.</param>
/// <param name="Result">How they differ.</param>
/// <param name="DeviationStandardUncertaintyMm">u of a deviation, mm: both walls' u added in squares, as if nothing were common to the
/// two, and that of the placing where a hand moved the section; NaN when the error of either is not known.</param>
public sealed record SectionComparison(
    SectionInput Reference, SectionInput Measured, AlignmentChoice Alignment, ComparisonResult Result, double DeviationStandardUncertaintyMm)
{
    /// <summary>U of a deviation, k = 2, mm; NaN when not known.</summary>
    public double DeviationExpandedUncertaintyMm => Estimate.CoverageFactor * DeviationStandardUncertaintyMm;

    /// <summary>True when no deviation can be told from none.</summary>
    public bool IsWithinUncertainty =>
        Math.Max(Result.Highest.DeviationMm, -Result.Lowest.DeviationMm) < DeviationExpandedUncertaintyMm;

    /// <summary>Areas in mm²: the reference's and the measured one's.</summary>
    public (double ReferenceMm2, double MeasuredMm2) AreasMm2 => (
        PolygonMoments.Of(Reference.Outline.Points).AreaMm2, PolygonMoments.Of(Measured.Outline.Points).AreaMm2);

    /// <summary>Compares two sections by an alignment that needs no marks; a best fit holds to what most of the outline says.</summary>
    public static SectionComparison Of(SectionInput reference, SectionInput measured, ComparisonOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return With(reference, measured, AlignmentChoice.Of(options.Alignment, options.IsMirrored)).ValueOrThrow();
    }

    /// <summary>Compares two sections.</summary>
    /// <returns>How they differ, or a problem of <see cref="SectionAlignment.Align"/>.</returns>
    public static Result<SectionComparison> With(SectionInput reference, SectionInput measured, AlignmentChoice choice)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        return reference.LaidOnMe(measured, choice).Then<SectionComparison>(laid =>
            Of(reference, measured, choice, OutlineComparison.Compare(reference.Outline, laid), reference.WallStandardUncertaintyWithMm(measured)));
    }

    /// <summary>The same two sections, the measured one moved by hand from where the alignment laid it.</summary>
    /// <param name="move">How, from where it lay before any hand touched it.</param>
    /// <exception cref="InvalidOperationException">It is moved by hand already.</exception>
    public SectionComparison MovedByHand(HandMove move)
    {
        ArgumentNullException.ThrowIfNull(move);
        return move.IsNone ? this
            : !Alignment.ByHand.IsNone ? throw new InvalidOperationException("Moves begin where the alignment laid the section.")
            : Of(Reference, Measured, Alignment with { ByHand = move }, OutlineComparison.Compare(Reference.Outline, move.Apply(Result.Measured)), DeviationStandardUncertaintyMm);
    }

    /// <summary>With what the placing adds to the walls' u where a hand moved the section.</summary>
    private static SectionComparison Of(SectionInput reference, SectionInput measured, AlignmentChoice choice, ComparisonResult result, double wallsMm) => new(
        reference, measured, choice, result, choice.ByHand.IsNone ? wallsMm
            : double.Hypot(wallsMm, HandPlacing.StandardUncertaintyMm(result.Samples, PolygonMoments.Of(result.Measured.Outline.Points).Centroid)));

    /// <summary>Area, width and height of both, and how they differ.</summary>
    public IReadOnlyList<MeasureDifference> Measures => MeasureDifference.Of(Reference, Measured);

    /// <summary>The overlay with the deviation round the reference.</summary>
    /// <param name="unit">What lengths are labelled in.</param>
    public Page Draw(LengthUnit unit) => ComparisonDrawing.Build(
        Result.Reference, Result.Measured.Outline, DeviationMark.Of(Result.Samples), Caption(unit, $", {AlignmentWords.Of(Alignment, unit)}"));

    /// <summary>The overlay small enough for two beside each other on a sheet.</summary>
    /// <param name="unit">What lengths are labelled in.</param>
    public Page DrawSmall(LengthUnit unit) =>
        ComparisonDrawing.Small(Result.Reference, Result.Measured.Outline, DeviationMark.Of(Result.Samples), Caption(unit, ""));

    /// <summary>The deviations as a table of commas: place, direction, region, deviation.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder("x_mm,y_mm,direction_deg,region,deviation_mm\n");
        foreach (var sample in Result.Samples)
        {
            text.Append(CultureInfo.InvariantCulture, $"{sample.Reference.XMm:0.0000},{sample.Reference.YMm:0.0000},{sample.Direction.Degrees:0.00},{RegionWords.Of(sample.Region)},{sample.DeviationMm:0.0000}\n");
        }

        return text.ToString();
    }

    private ComparisonCaption Caption(LengthUnit unit, string alignment)
    {
        var notes = new List<string>
        {
            $"mean {MeasureText.Deviation(Result.MeanDeviationMm, unit)}, rms {MeasureText.Length(new(Result.RmsDeviationMm, 0), unit)}{alignment}",
        };
        if (!double.IsNaN(DeviationStandardUncertaintyMm))
        {
            notes.Add($"U of a deviation {MeasureText.Length(new(DeviationExpandedUncertaintyMm, 0), unit)} (k = 2)");
        }

        return new($"{Measured.Name} on {Reference.Name}", Reference.Name, Measured.Name) { Notes = notes, Unit = unit };
    }
}
