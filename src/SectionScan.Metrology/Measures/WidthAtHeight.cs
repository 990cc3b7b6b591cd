using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Measures;

/// <summary>Where an outline is crossed by a level line, and how wide it is there.</summary>
/// <param name="YMm">The height of the line in the section frame, mm.</param>
/// <param name="Chords">The stretches of the line inside the outline, from left to right; empty above the roof and below the floor.
/// More than one where the floor or the roof has a bump.</param>
public sealed record WidthAtHeight(double YMm, IReadOnlyList<(double FromXMm, double ToXMm)> Chords)
{
    /// <summary>From the leftmost to the rightmost crossing, mm; zero without a crossing.</summary>
    public double OverallMm => Chords.Count == 0 ? 0 : Chords[^1].ToXMm - Chords[0].FromXMm;

    /// <summary>The open width: all chords together, mm.</summary>
    public double OpenMm => Chords.Sum(chord => chord.ToXMm - chord.FromXMm);

    /// <summary>The width of an outline at a height.</summary>
    public static WidthAtHeight Of(Outline outline, double yMm)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return Of(outline.Points, yMm);
    }

    /// <summary>The widths of an outline at evenly spaced heights, from floor to roof, neither of them included.</summary>
    /// <param name="outline">The outline.</param>
    /// <param name="count">How many heights: the k-th of n lies at k/(n+1) of the height.</param>
    public static IReadOnlyList<WidthAtHeight> Profile(Outline outline, int count)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var (floor, roof) = (outline[0].YMm, outline[0].YMm);
        foreach (var point in outline.Points)
        {
            floor = Math.Min(floor, point.YMm);
            roof = Math.Max(roof, point.YMm);
        }

        return [.. Enumerable.Range(1, count).Select(k => Of(outline, floor + ((roof - floor) * k / (count + 1))))];
    }

    internal static WidthAtHeight Of(ReadOnlySpan<SectionPoint> corners, double yMm)
    {
        // A corner on the line belongs to the sides above it, so that crossings always come in pairs.
        var crossings = new List<double>();
        for (var i = 0; i < corners.Length; i++)
        {
            var (from, to) = (corners[i], corners[i + 1 == corners.Length ? 0 : i + 1]);
            if (from.YMm <= yMm != to.YMm <= yMm)
            {
                crossings.Add(from.XMm + ((yMm - from.YMm) / (to.YMm - from.YMm) * (to.XMm - from.XMm)));
            }
        }

        crossings.Sort();
        return new(yMm, [.. crossings.Chunk(2).Select(pair => (pair[0], pair[1]))]);
    }
}
