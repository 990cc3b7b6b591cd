namespace SectionScan.Drawings.Sections;

/// <summary>The unit in which lengths are shown; all is kept in mm.</summary>
public enum LengthUnit
{
    /// <summary>Millimetres.</summary>
    Millimetre,

    /// <summary>Inches of 25.4 mm.</summary>
    Inch,
}
