using System.Globalization;
using SectionScan.Drawings.Sections;

namespace SectionScan.Cli.Output;

/// <summary>Bare numbers for tables whose unit stands above them: five columns fit a screen of 80, and ten units do not.</summary>
/// <param name="Unit">The unit shown.</param>
internal readonly record struct TableNumbers(LengthUnit Unit)
{
    private const double MmPerInch = 25.4;

    /// <summary>"mm" or "in".</summary>
    public string LengthWord => IsInch ? "in" : "mm";

    /// <summary>"mm²" or "in²".</summary>
    public string AreaWord => LengthWord + "²";

    private bool IsInch => Unit == LengthUnit.Inch;

    /// <summary>A length, "0.41" or "0.016".</summary>
    public string Length(double lengthMm) =>
        IsInch ? (lengthMm / MmPerInch).ToString("0.000", CultureInfo.InvariantCulture) : lengthMm.ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>A signed length, "+0.41" or "−0.016"; zero has no sign.</summary>
    public string Signed(double lengthMm) => IsInch
        ? (lengthMm / MmPerInch).ToString("+0.000;−0.000;0.000", CultureInfo.InvariantCulture) : lengthMm.ToString("+0.00;−0.00;0.00", CultureInfo.InvariantCulture);

    /// <summary>An area, "1043.6" or "1.6176".</summary>
    public string Area(double areaMm2) => IsInch
        ? (areaMm2 / (MmPerInch * MmPerInch)).ToString("0.0000", CultureInfo.InvariantCulture) : areaMm2.ToString("0.0", CultureInfo.InvariantCulture);
}
