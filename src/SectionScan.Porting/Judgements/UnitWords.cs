using System.Globalization;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Porting.Judgements;

/// <summary>Quantities in the words of a finding, each with its unit: in millimetres and metres, or in inches and feet.</summary>
/// <param name="IsInch">True for inches and feet.</param>
public sealed record UnitWords(bool IsInch)
{
    private const double MmPerCm = 10;

    /// <summary>Millimetres.</summary>
    public static UnitWords Millimetre { get; } = new(false);

    /// <summary>Inches.</summary>
    public static UnitWords Inch { get; } = new(true);

    /// <summary>The stretch that a rate along the port is told for, mm.</summary>
    public double StretchMm => IsInch ? Metrology.Quantities.Inch.Mm : MmPerCm;

    /// <summary>The same in words: "10 mm" or "1 in".</summary>
    public string Stretch => IsInch ? "1 in" : "10 mm";

    /// <summary>A speed: "77.3 m/s", "253.6 ft/s".</summary>
    public string Speed(double mPerS) => $"{Number(Shown(mPerS), "0.0")} {SpeedName}";

    /// <summary>A speed with U (k = 2); without it in a section that is exact, as a target is.</summary>
    public string Speed(Estimate mPerS) => mPerS.StandardUncertainty == 0 ? Speed(mPerS.Value)
        : $"{Number(Shown(mPerS.Value), "0.0")} ± {Number(Shown(mPerS.ExpandedUncertainty), "0.0")} {SpeedName}";

    /// <summary>A limit of speed: "75 m/s".</summary>
    public string SpeedLimit(double mPerS) => $"{Number(Shown(mPerS), "0")} {SpeedName}";

    /// <summary>Two limits of speed: "60 to 75 m/s".</summary>
    public string SpeedLimits((double From, double To) mPerS) => $"{Number(Shown(mPerS.From), "0")} to {SpeedLimit(mPerS.To)}";

    /// <summary>An area as a rule of thumb gives it: "853 mm²", "1.32 in²".</summary>
    public string RoundArea(double mm2) => IsInch
        ? $"{Number(mm2 / (Metrology.Quantities.Inch.Mm * Metrology.Quantities.Inch.Mm), "0.00")} in²"
        : $"{Number(mm2, "0")} mm²";

    /// <summary>A volume with U (k = 2): "120.54 ± 0.74 cm³".</summary>
    public string Volume(Estimate mm3)
    {
        var (one, format, name) = IsInch ? (Math.Pow(Metrology.Quantities.Inch.Mm, 3), "0.000", "in³") : (Math.Pow(MmPerCm, 3), "0.00", "cm³");
        return $"{Number(mm3.Value / one, format)} ± {Number(mm3.ExpandedUncertainty / one, format)} {name}";
    }

    /// <summary>A length: "0.50 mm", "0.020 in".</summary>
    public string Length(double mm) => IsInch ? $"{Number(mm / Metrology.Quantities.Inch.Mm, "0.000")} in" : $"{Number(mm, "0.00")} mm";

    private string SpeedName => IsInch ? "ft/s" : "m/s";

    private double Shown(double mPerS) => IsInch ? mPerS / Feet.Metres : mPerS;

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
