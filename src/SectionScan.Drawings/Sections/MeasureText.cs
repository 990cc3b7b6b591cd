using System.Globalization;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Drawings.Sections;

/// <summary>Measures in words on drawings: value, expanded uncertainty (k = 2) and unit.</summary>
public static class MeasureText
{
    /// <summary>A length in mm as <c>38.42 ± 0.06 mm</c> or <c>1.5126 ± 0.0024 in</c>; without the second part when u is zero.</summary>
    public static string Length(Estimate lengthMm, LengthUnit unit) => unit == LengthUnit.Inch
        ? WithUncertainty(lengthMm.Scaled(1 / Inch.Mm), "0.0000", "in")
        : WithUncertainty(lengthMm, "0.00", "mm");

    /// <summary>An area in mm² as <c>1043.6 ± 4.1 mm²</c> or <c>1.6176 ± 0.0064 in²</c>.</summary>
    public static string Area(Estimate areaMm2, LengthUnit unit) => unit == LengthUnit.Inch
        ? WithUncertainty(areaMm2.Scaled(1 / (Inch.Mm * Inch.Mm)), "0.0000", "in²")
        : WithUncertainty(areaMm2, "0.0", "mm²");

    /// <summary>A signed deviation as <c>+0.41 mm</c> or <c>−0.009 in</c>; zero has no sign.</summary>
    public static string Deviation(double deviationMm, LengthUnit unit) => unit == LengthUnit.Inch
        ? string.Create(CultureInfo.InvariantCulture, $"{deviationMm / Inch.Mm:+0.000;−0.000;0.000} in")
        : string.Create(CultureInfo.InvariantCulture, $"{deviationMm:+0.00;−0.00;0.00} mm");

    private static string WithUncertainty(Estimate estimate, string format, string unit)
    {
        var value = estimate.Value.ToString(format, CultureInfo.InvariantCulture);
        var uncertainty = estimate.ExpandedUncertainty.ToString(format, CultureInfo.InvariantCulture);
        return estimate.StandardUncertainty > 0 ? $"{value} ± {uncertainty} {unit}" : $"{value} {unit}";
    }
}
