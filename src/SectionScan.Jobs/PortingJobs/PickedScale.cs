using System.Globalization;
using SectionScan.Imaging.Scales;
using SectionScan.Metrology.Frames;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>The scale of a photo without a printed target: two points of known distance, or the corners of a known rectangle, picked on
/// the photo.</summary>
/// <param name="Places">Two points, or four corners from the top left clockwise, px as displayed.</param>
/// <param name="WidthMm">The points' distance, or the rectangle's width, mm.</param>
/// <param name="HeightMm">The rectangle's height, mm; null for two points.</param>
public sealed record PickedScale(IReadOnlyList<PixelPoint> Places, double WidthMm, double? HeightMm)
{
    /// <summary>Corners in the order that a rectangle's are named in: from the top left clockwise, as displayed.</summary>
    public static IReadOnlyList<PixelPoint> InOrder(IReadOnlyList<PixelPoint> corners)
    {
        ArgumentNullException.ThrowIfNull(corners);
        var (x, y) = (corners.Average(p => p.X), corners.Average(p => p.Y));
        List<PixelPoint> round = [.. corners.OrderBy(p => Math.Atan2(p.Y - y, p.X - x))];
        var first = round.IndexOf(round.MinBy(p => p.X + p.Y));
        return [.. round.Skip(first), .. round.Take(first)];
    }

    /// <summary>The same as the digitiser takes it.</summary>
    public ScaleSource ToSource() => HeightMm is { } height
        ? new RectangleScale(Places, WidthMm, height)
        : new PointsScale(Places[0], Places[1], WidthMm);

    /// <summary>The same as name and value, for documents; as the command line writes it.</summary>
    public IEnumerable<(string Name, string Value)> InWords()
    {
        var places = string.Join(',', Places.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:0.##},{p.Y:0.##}")));
        if (HeightMm is { } height)
        {
            yield return ("rectangle", places);
            yield return ("size", string.Create(CultureInfo.InvariantCulture, $"{WidthMm},{height}"));
        }
        else
        {
            yield return ("points", string.Create(CultureInfo.InvariantCulture, $"{places},{WidthMm}"));
        }
    }
}
