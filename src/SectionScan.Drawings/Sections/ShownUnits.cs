using System.Globalization;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Judgements;

namespace SectionScan.Drawings.Sections;

/// <summary>Numbers of tables and plots in the unit shown, without the unit's name: that stands at the head of the column or axis. Speeds
/// go with lengths: m/s, or ft/s of 0.3048 m.</summary>
/// <param name="Unit">The unit of length.</param>
public sealed record ShownUnits(LengthUnit Unit)
{
    private const double Mm3PerCm3 = 1000;

    private bool IsInch => Unit == LengthUnit.Inch;

    /// <summary>The same for findings in words.</summary>
    public UnitWords Words => IsInch ? UnitWords.Inch : UnitWords.Millimetre;

    /// <summary>"mm" or "in".</summary>
    public string LengthName => IsInch ? "in" : "mm";

    /// <summary>"mm²" or "in²".</summary>
    public string AreaName => LengthName + "²";

    /// <summary>"cm³" or "in³".</summary>
    public string VolumeName => IsInch ? "in³" : "cm³";

    /// <summary>"m/s" or "ft/s".</summary>
    public string SpeedName => IsInch ? "ft/s" : "m/s";

    /// <summary>A length in the unit shown.</summary>
    public double FromMm(double mm) => IsInch ? mm / Inch.Mm : mm;

    /// <summary>An area in the unit shown.</summary>
    public double FromMm2(double mm2) => IsInch ? mm2 / (Inch.Mm * Inch.Mm) : mm2;

    /// <summary>A volume in the unit shown.</summary>
    public double FromMm3(double mm3) => IsInch ? mm3 / (Inch.Mm * Inch.Mm * Inch.Mm) : mm3 / Mm3PerCm3;

    /// <summary>A speed in the unit shown.</summary>
    public double FromMPerS(double mPerS) => IsInch ? mPerS / Feet.Metres : mPerS;

    /// <summary>A length with U (k = 2): "31.29 ± 0.18".</summary>
    public string Length(Estimate mm) => WithU(mm, FromMm, IsInch ? "0.0000" : "0.00");

    /// <summary>A length without U.</summary>
    public string Length(double mm) => Number(FromMm(mm), IsInch ? "0.000" : "0.00");

    /// <summary>A length along the port, to a tenth of a millimetre.</summary>
    public string Distance(Estimate mm) => WithU(mm, FromMm, IsInch ? "0.000" : "0.0");

    /// <summary>A signed length without U: "+0.37".</summary>
    public string Deviation(double mm) => Number(FromMm(mm), IsInch ? "+0.000;−0.000;0.000" : "+0.00;−0.00;0.00");

    /// <summary>An area with U.</summary>
    public string Area(Estimate mm2) => WithU(mm2, FromMm2, IsInch ? "0.0000" : "0.0");

    /// <summary>An area without U.</summary>
    public string Area(double mm2) => Number(FromMm2(mm2), IsInch ? "0.0000" : "0.0");

    /// <summary>A signed area with U.</summary>
    public string SignedArea(Estimate mm2)
    {
        var format = IsInch ? "0.0000" : "0.0";
        return $"{Number(FromMm2(mm2.Value), $"+{format};−{format};{format}")} ± {Number(FromMm2(mm2.ExpandedUncertainty), format)}";
    }

    /// <summary>A volume with U.</summary>
    public string Volume(Estimate mm3) => WithU(mm3, FromMm3, IsInch ? "0.000" : "0.00");

    /// <summary>A small volume, such as a part of an uncertainty.</summary>
    public string FineVolume(double mm3) => Number(FromMm3(mm3), IsInch ? "0.0000" : "0.000");

    /// <summary>A speed without U.</summary>
    public string Speed(double mPerS) => Number(FromMPerS(mPerS), "0.0");

    private static string WithU(Estimate value, Func<double, double> shown, string format) => value.StandardUncertainty > 0
        ? $"{Number(shown(value.Value), format)} ± {Number(shown(value.ExpandedUncertainty), format)}"
        : Number(shown(value.Value), format);

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
