namespace SectionScan.Metrology.Quantities;

/// <summary>The international foot, 0.3048 m exactly (NIST Special Publication 811, appendix B).</summary>
public static class Feet
{
    /// <summary>Metres in a foot.</summary>
    public const double Metres = 0.3048;
}
