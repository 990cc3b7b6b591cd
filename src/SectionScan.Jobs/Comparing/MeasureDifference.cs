using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Jobs.Comparing;

/// <summary>One measure of two sections, in mm or mm², each with its uncertainty.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="Reference">Of the reference.</param>
/// <param name="Measured">Of the section compared with it.</param>
/// <param name="IsErrorKnown">False when the error of either is not known; their u is zero then and means nothing.</param>
public sealed record MeasureDifference(Measure Measure, Estimate Reference, Estimate Measured, bool IsErrorKnown)
{
    private static readonly Measure[] Compared = [MeasureCatalogue.Area, MeasureCatalogue.Width, MeasureCatalogue.Height];

    /// <summary>The measured one's less the reference's; both u added in squares, as if nothing were common to the two (JCGM 100:2008,
    /// 5.1.2). What is common, such as one sheet's print, makes the true u smaller.</summary>
    public Estimate Difference => new(
        Measured.Value - Reference.Value, double.Hypot(Measured.StandardUncertainty, Reference.StandardUncertainty));

    /// <summary>Area, width and height of two sections.</summary>
    public static IReadOnlyList<MeasureDifference> Of(SectionInput reference, SectionInput measured)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        var (first, second) = (MeasuresOf(reference), MeasuresOf(measured));
        var isKnown = reference.IsErrorKnown && measured.IsErrorKnown;
        return [.. Compared.Select(each => new MeasureDifference(each, first[each].Estimate, second[each].Estimate, isKnown))];
    }

    /// <summary>One of the three as it is shown: without U where that is not known.</summary>
    public Estimate Shown(Estimate estimate) => IsErrorKnown ? estimate : estimate with { StandardUncertainty = 0 };

    /// <summary>One of the three in words, with U where it is known.</summary>
    public string InWords(Estimate estimate, LengthUnit unit) =>
        Measure.Dimension == MeasureDimension.Area ? MeasureText.Area(Shown(estimate), unit) : MeasureText.Length(Shown(estimate), unit);

    /// <summary>The unit of documents: mm or mm2.</summary>
    internal string Unit => Measure.Dimension == MeasureDimension.Area ? "mm2" : "mm";

    private static MeasuredOutline MeasuresOf(SectionInput section) => MeasuredOutline.Of(section.Outline, section.ErrorSources, Compared);
}
