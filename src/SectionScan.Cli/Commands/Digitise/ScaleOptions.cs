using System.Globalization;
using SectionScan.Imaging.Scales;

namespace SectionScan.Cli.Commands.Digitise;

/// <summary>The options that tell where the scale comes from.</summary>
internal static class ScaleOptions
{
    /// <summary>The source of scale, or null for the printed sheet or card.</summary>
    public static ScaleSource? SourceOf(DigitiseCommandSettings settings) => settings switch
    {
        { Checkerboard: { } square } => new CheckerboardScale(square, settings.PoseFrom),
        { Points: { } points } => new PointsScale(points.First, points.Second, points.DistanceMm),
        { Rectangle: { } rectangle, Size: { } size } => new RectangleScale(rectangle.Corners, size.WidthMm, size.HeightMm),
        { Dpi: { } dpi } => new ScanScale(dpi),
        { IsScan: true } => new ScanScale(),
        _ => null,
    };

    /// <summary>The same as name and value, for documents.</summary>
    public static IEnumerable<(string Name, string Value)> InWords(DigitiseCommandSettings settings)
    {
        if (settings.Checkerboard is { } square)
        {
            yield return ("checkerboard", square.ToString(CultureInfo.InvariantCulture));
        }

        if (settings.PoseFrom is { } pose)
        {
            yield return ("pose-from", Path.GetFileName(pose));
        }

        if (settings.Points is { } points)
        {
            yield return ("points", points.Text);
        }

        if (settings.Rectangle is { } rectangle)
        {
            yield return ("rectangle", rectangle.Text);
        }

        if (settings.Size is { } size)
        {
            yield return ("size", size.Text);
        }

        if (settings.IsScan || settings.Dpi is not null)
        {
            yield return ("scan", settings.Dpi?.ToString(CultureInfo.InvariantCulture) ?? "resolution of the file");
        }
    }
}
