using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;

namespace SectionScan.Imaging.Scales;

/// <summary>The scale of a printed sheet or card.</summary>
internal static class PrintedScale
{
    // Calliper on the check bars: 0.05 mm over 200 mm across and 150 mm up (common practice, no source).
    private const double BarAcrossRelative = 0.05 / 200;
    public const double BarUpRelative = 0.05 / 150;

    // An unchecked print: desktop printers are off by 0.1 to 0.5 % (from memory), each direction on its own.
    public const double UncheckedPrintRelative = 0.0015;

    /// <summary>The scale.</summary>
    /// <param name="fit">The camera.</param>
    /// <param name="target">The target.</param>
    /// <param name="corners">How many of its corners were used.</param>
    /// <param name="printRatio">Measured over nominal length of the check bars, or null when nobody checked.</param>
    public static ImageScale Of(CameraFit fit, ScaleTarget target, int corners, (double X, double Y)? printRatio)
    {
        var ratio = printRatio ?? (1, 1);
        return ImageScale.Fitted(
            fit, new(target.Kind, corners, target.Saddles.Count, fit.RmsPx, ratio.X, ratio.Y),
            printRatio is null
                ? new("print scale", UncheckedPrintRelative, UncheckedPrintRelative, IsShared: false, IsAssumed: true)
                : new("print scale", BarAcrossRelative, BarUpRelative, IsShared: false, IsAssumed: false));
    }
}
