using System.Globalization;
using SectionScan.Jobs.Digitising;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>Measured values as a person reads them: the expanded uncertainty (k = 2) to two significant digits, the value to the same
/// decimal place, as JCGM 100:2008, 7.2.6 advises.</summary>
public static class QuantityText
{
    private const int MostDecimals = 6;
    private const int DigitsOfUncertainty = 2;
    private const int DigitsWithoutUncertainty = 3;

    /// <summary>A measured quantity: "1043.6 ± 4.1 mm²".</summary>
    public static string Of(MeasuredQuantity quantity, bool isInch)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        var (estimate, unit) = MeasureUnits.In(quantity, isInch);
        return Of(estimate, quantity.IsUncertaintyKnown, UnitInWords(unit));
    }

    /// <summary>A length in mm or inch.</summary>
    public static string LengthMm(Estimate lengthMm, bool isInch) =>
        Of(isInch ? lengthMm.Scaled(1 / 25.4) : lengthMm, lengthMm.StandardUncertainty > 0, isInch ? "in" : "mm");

    /// <summary>An area in mm² or in².</summary>
    public static string AreaMm2(Estimate areaMm2, bool isInch) =>
        Of(isInch ? areaMm2.Scaled(1 / (25.4 * 25.4)) : areaMm2, areaMm2.StandardUncertainty > 0, isInch ? "in²" : "mm²");

    /// <summary>A signed deviation in mm or inch, to the digit that its uncertainty bears.</summary>
    /// <param name="deviationMm">The deviation, mm.</param>
    /// <param name="expandedMm">Its expanded uncertainty, mm; not a number when not known.</param>
    /// <param name="isInch">True for inches.</param>
    public static string DeviationMm(double deviationMm, double expandedMm, bool isInch) =>
        $"{DeviationNumber(deviationMm, expandedMm, isInch)} {(isInch ? "in" : "mm")}";

    /// <summary>The same without its unit, where that stands elsewhere.</summary>
    /// <param name="deviationMm">The deviation, mm.</param>
    /// <param name="expandedMm">Its expanded uncertainty, mm; not a number when not known.</param>
    /// <param name="isInch">True for inches.</param>
    public static string DeviationNumber(double deviationMm, double expandedMm, bool isInch)
    {
        var factor = isInch ? 1 / 25.4 : 1;
        var decimals = double.IsFinite(expandedMm) && expandedMm > 0 ? Decimals(expandedMm * factor, DigitsOfUncertainty) : isInch ? 3 : 2;
        var value = Math.Round(deviationMm * factor, decimals);
        var sign = value > 0 ? "+" : value < 0 ? "−" : string.Empty;
        return $"{sign}{Math.Abs(value).ToString("F" + decimals, CultureInfo.InvariantCulture)}";
    }

    private static string Of(Estimate estimate, bool isKnown, string unit)
    {
        var end = unit.Length == 0 ? string.Empty : " " + unit;
        if (!isKnown || !(estimate.ExpandedUncertainty > 0))
        {
            return Fixed(estimate.Value, Decimals(Math.Abs(estimate.Value), DigitsWithoutUncertainty)) + end;
        }

        var decimals = Decimals(estimate.ExpandedUncertainty, DigitsOfUncertainty);
        return $"{Fixed(estimate.Value, decimals)} ± {Fixed(estimate.ExpandedUncertainty, decimals)}{end}";
    }

    private static int Decimals(double value, int digits) =>
        value > 0 ? Math.Clamp(digits - 1 - (int)Math.Floor(Math.Log10(value)), 0, MostDecimals) : 2;

    private static string Fixed(double value, int decimals) =>
        value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace('-', '−');

    private static string UnitInWords(string unit) => unit switch
    {
        "1" => string.Empty,
        "mm2" => "mm²",
        "in2" => "in²",
        "mm4" => "mm⁴",
        "in4" => "in⁴",
        _ => unit,
    };
}
