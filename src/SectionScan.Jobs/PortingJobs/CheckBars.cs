namespace SectionScan.Jobs.PortingJobs;

/// <summary>The check bars of the sheet, which a person measures to learn how true the print is.</summary>
public static class CheckBars
{
    /// <summary>The bar across, mm.</summary>
    public const double AcrossMm = 200;

    /// <summary>The bar up, mm.</summary>
    public const double UpMm = 150;

    /// <summary>A print farther off than this share was scaled, and is printed again instead.</summary>
    public const double MostOff = 0.1;
}
