namespace SectionScan.Metrology.Quantities;

/// <summary>The international inch.</summary>
public static class Inch
{
    /// <summary>One inch in mm, exactly (NIST Special Publication 811, appendix B).</summary>
    public const double Mm = 25.4;
}
