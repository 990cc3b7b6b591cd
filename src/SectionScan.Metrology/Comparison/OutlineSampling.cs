using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Comparison;

/// <summary>Places at even steps along an outline.</summary>
internal static class OutlineSampling
{
    /// <summary>The fewest places, however wide the spacing.</summary>
    private const int Fewest = 72;

    /// <summary>More places than this show nothing more and cost memory.</summary>
    private const int Most = 20_000;

    /// <summary>As many places as the spacing asks for, 72 at least.</summary>
    public static SectionPoint[] Even(Outline outline, double spacingMm)
    {
        ArgumentNullException.ThrowIfNull(outline);
        if (!double.IsFinite(spacingMm) || spacingMm <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(spacingMm), spacingMm, "A spacing must be a positive number of mm.");
        }

        var count = PolygonFacts.Of(outline).PerimeterMm / spacingMm;
        return outline.Resampled((int)Math.Clamp(Math.Round(count), Fewest, Most));
    }
}
