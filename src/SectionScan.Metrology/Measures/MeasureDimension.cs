namespace SectionScan.Metrology.Measures;

/// <summary>What kind of quantity a measure is, and with it the unit it is kept in.</summary>
public enum MeasureDimension
{
    /// <summary>A pure number, without unit.</summary>
    None,

    /// <summary>A length in mm.</summary>
    Length,

    /// <summary>An area in mm².</summary>
    Area,

    /// <summary>A second moment of area in mm⁴.</summary>
    SecondMomentOfArea,
}
