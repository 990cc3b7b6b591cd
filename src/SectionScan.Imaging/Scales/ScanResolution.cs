using SectionScan.Metrology.Results;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Metadata;

namespace SectionScan.Imaging.Scales;

/// <summary>The resolution that a scanner wrote into its file: PNG's pHYs, JPEG's JFIF density, TIFF's X- and YResolution.</summary>
internal static class ScanResolution
{
    private const double CentimetresPerInch = 2.54;
    private const double MetresPerInch = 0.0254;
    private const double Lowest = 50;
    private const double Highest = 9600;

    /// <summary>Dots per inch across and down the stored picture.</summary>
    /// <returns>The two, or <c>scan-without-resolution</c>: also for 72 and 96 dots per inch, which programs write when they know
    /// nothing.</returns>
    public static Result<DotsPerInch> Read(string path)
    {
        ImageMetadata metadata;
        try
        {
            metadata = Image.Identify(path)?.Metadata ?? new ImageMetadata();
        }
        catch (Exception e) when (e is ImageFormatException or InvalidOperationException or ArgumentException or OverflowException
            or IndexOutOfRangeException or NotSupportedException or IOException)
        {
            return ScaleProblems.NoResolution(path, "its header cannot be read");
        }

        var factor = metadata.ResolutionUnits switch
        {
            PixelResolutionUnit.PixelsPerInch => 1,
            PixelResolutionUnit.PixelsPerCentimeter => CentimetresPerInch,
            PixelResolutionUnit.PixelsPerMeter => MetresPerInch,
            _ => 0,
        };
        var dots = new DotsPerInch(metadata.HorizontalResolution * factor, metadata.VerticalResolution * factor);
        return IsPlausible(dots.Across) && IsPlausible(dots.Down)
            ? dots
            : ScaleProblems.NoResolution(path, FormattableString.Invariant($"{dots.Across:0.#} × {dots.Down:0.#} dots per inch"));
    }

    private static bool IsPlausible(double dots) =>
        dots is >= Lowest and <= Highest && Math.Abs(dots - 72) > 0.5 && Math.Abs(dots - 96) > 0.5;
}
