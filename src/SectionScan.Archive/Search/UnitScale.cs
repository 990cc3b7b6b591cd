using SectionScan.Metrology.Quantities;

namespace SectionScan.Archive.Search;

/// <summary>Units that people write, and the unit that each kind of quantity is compared in.</summary>
/// <remarks>The inch is 25.4 mm and the foot 304.8 mm exactly; the inch of water is the conventional one of NIST Special Publication 811,
/// appendix B.8, 249.0889 Pa (cited from memory).</remarks>
internal static class UnitScale
{
    private const double CubicFootLitres = 28.316846592;

    private static readonly Dictionary<string, (string Base, double Factor)> Units = new(StringComparer.OrdinalIgnoreCase)
    {
        ["mm"] = ("mm", 1),
        ["cm"] = ("mm", 10),
        ["m"] = ("mm", 1000),
        ["in"] = ("mm", Inch.Mm),
        ["inch"] = ("mm", Inch.Mm),
        ["\""] = ("mm", Inch.Mm),
        ["mm²"] = ("mm²", 1),
        ["mm2"] = ("mm²", 1),
        ["cm²"] = ("mm²", 100),
        ["cm2"] = ("mm²", 100),
        ["in²"] = ("mm²", Inch.Mm * Inch.Mm),
        ["in2"] = ("mm²", Inch.Mm * Inch.Mm),
        ["mm³"] = ("mm³", 1),
        ["mm3"] = ("mm³", 1),
        ["cm³"] = ("mm³", 1000),
        ["cm3"] = ("mm³", 1000),
        ["cc"] = ("mm³", 1000),
        ["ml"] = ("mm³", 1000),
        ["in³"] = ("mm³", Inch.Mm * Inch.Mm * Inch.Mm),
        ["in3"] = ("mm³", Inch.Mm * Inch.Mm * Inch.Mm),
        ["l/min"] = ("l/min", 1),
        ["l/s"] = ("l/min", 60),
        ["cfm"] = ("l/min", CubicFootLitres),
        ["m³/h"] = ("l/min", 1000.0 / 60),
        ["m3/h"] = ("l/min", 1000.0 / 60),
        ["Pa"] = ("Pa", 1),
        ["hPa"] = ("Pa", 100),
        ["mbar"] = ("Pa", 100),
        ["kPa"] = ("Pa", 1000),
        ["inH2O"] = ("Pa", 249.0889),
    };

    /// <summary>The value in the unit that its kind is compared in; an unknown unit is a kind of its own.</summary>
    public static (double Value, string Unit) ToBase(double value, string unit) =>
        Units.TryGetValue(unit, out var known) ? (value * known.Factor, known.Base) : (value, unit);
}
