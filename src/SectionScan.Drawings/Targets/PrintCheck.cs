using System.Globalization;

namespace SectionScan.Drawings.Targets;

/// <summary>The words on how to print a target and to check the print.</summary>
internal static class PrintCheck
{
    public const string Print = "Print at 100 % (“actual size”), never “fit to page”.";

    public const string MeasureBothBars =
        "Measure both bars with a caliper, across and up, from the middle of one end line to the middle of the other.";

    /// <summary>What to do with the two lengths read, with an example of a print that came out 0.2 % short across.</summary>
    public static string GiveRatio(double acrossMm, double upMm)
    {
        var (readAcross, readUp) = (Math.Round(acrossMm * 0.998, 2), Math.Round(upMm * 0.9993, 2));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Then give --print-ratio X,Y with X = read across ÷ {acrossMm:0} and Y = read up ÷ {upMm:0}. Example: {readAcross:0.00} and {readUp:0.00} mm give --print-ratio {readAcross / acrossMm:0.0000},{readUp / upMm:0.0000}.");
    }
}
