using System.ComponentModel;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Results;

namespace SectionScan.Cli.Options;

/// <summary>The unit that lengths and areas are shown in. What is stored is always millimetres; the default is millimetres.</summary>
/// <remarks>One inch is 25.4 mm exactly (international inch, NIST Special Publication 811, appendix B).</remarks>
[TypeConverter(typeof(UnitOptionConverter))]
public readonly record struct UnitOption
{
    private readonly bool isInch;

    private UnitOption(bool isInch) => this.isInch = isInch;

    /// <summary>Millimetres.</summary>
    public static UnitOption Millimetre => new(false);

    /// <summary>Inches.</summary>
    public static UnitOption Inch => new(true);

    /// <summary>The same for drawings and tables.</summary>
    public LengthUnit OfLength => isInch ? LengthUnit.Inch : LengthUnit.Millimetre;

    /// <summary>How the unit of length is written: <c>mm</c> or <c>in</c>.</summary>
    public string LengthSymbol => isInch ? "in" : "mm";

    /// <summary>How the unit of area is written: <c>mm²</c> or <c>in²</c>.</summary>
    public string AreaSymbol => LengthSymbol + "²";

    /// <summary>How the unit of volume is written: <c>mm³</c> or <c>in³</c>.</summary>
    public string VolumeSymbol => LengthSymbol + "³";

    /// <summary>A length in this unit.</summary>
    /// <param name="lengthMm">The length in mm.</param>
    public double FromMm(double lengthMm) => isInch ? lengthMm / Metrology.Quantities.Inch.Mm : lengthMm;

    /// <summary>An area in the square of this unit.</summary>
    /// <param name="areaMm2">The area in mm².</param>
    public double FromMm2(double areaMm2) => isInch ? areaMm2 / (Metrology.Quantities.Inch.Mm * Metrology.Quantities.Inch.Mm) : areaMm2;

    /// <summary>A volume in the cube of this unit.</summary>
    /// <param name="volumeMm3">The volume in mm³.</param>
    public double FromMm3(double volumeMm3) =>
        isInch ? volumeMm3 / (Metrology.Quantities.Inch.Mm * Metrology.Quantities.Inch.Mm * Metrology.Quantities.Inch.Mm) : volumeMm3;

    /// <summary>Reads <c>mm</c> or <c>in</c>, in either case.</summary>
    /// <returns>The unit, or <see cref="OptionProblems.UnknownUnit"/>.</returns>
    public static Result<UnitOption> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Trim().ToUpperInvariant() switch
        {
            "MM" => Millimetre,
            "IN" => Inch,
            _ => OptionProblems.UnknownUnit(text),
        };
    }

    /// <summary>The symbol of the unit of length, as it is given on the command line.</summary>
    public override string ToString() => LengthSymbol;
}
