using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.Digitising;

/// <summary>Measures in the units that documents and answers state them in.</summary>
/// <remarks>Unit codes after UCUM, the Unified Code for Units of Measure, but for the inch, which is written "in".</remarks>
public static class MeasureUnits
{
    /// <summary>A measure's value and unit.</summary>
    /// <param name="quantity">The measured quantity.</param>
    /// <param name="isInch">True for inches, false for millimetres.</param>
    public static (Estimate Estimate, string Unit) In(MeasuredQuantity quantity, bool isInch)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        return (quantity.Estimate.Scaled(Factor(quantity.Measure, isInch)), UnitOf(quantity.Measure, isInch));
    }

    /// <summary>How many of the unit shown make one of the unit kept.</summary>
    public static double Factor(Measure measure, bool isInch)
    {
        ArgumentNullException.ThrowIfNull(measure);
        return isInch ? Math.Pow(1 / Inch.Mm, Power(measure)) : 1;
    }

    /// <summary>The measures as a document states them: millimetres.</summary>
    public static IReadOnlyList<DocumentMeasure> ForDocument(MeasuredOutline measured)
    {
        ArgumentNullException.ThrowIfNull(measured);
        return [.. measured.Quantities.Select(q => new DocumentMeasure(q.Measure.Name, q.Estimate, UnitOf(q.Measure, false), q.Budget))];
    }

    private static int Power(Measure measure) => measure.Dimension switch
    {
        MeasureDimension.Length => 1,
        MeasureDimension.Area => 2,
        MeasureDimension.SecondMomentOfArea => 4,
        _ => 0,
    };

    private static string UnitOf(Measure measure, bool isInch) => Power(measure) switch
    {
        0 => "1",
        1 => isInch ? "in" : "mm",
        var power => FormattableString.Invariant($"{(isInch ? "in" : "mm")}{power}"),
    };
}
