using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Lengthwise;

/// <summary>The radii of a wall's turn.</summary>
/// <remarks>The one radius of a turn is that of the circle through the stretch where the wall turns from a tenth to nine tenths of its
/// whole turn: straight lead-ins fall away, and two moulds of one port give the same stretch. Where the wall is no one arc, the residual
/// says so, and <see cref="Along"/> tells the radius place by place.</remarks>
internal static class WallTurn
{
    private const double DirectionWindowMm = 2;
    private const double FromShare = 0.1;
    private const double ToShare = 0.9;
    private const double LocalWindowMm = 10;
    private const double LocalStepMm = 2;

    /// <summary>Over less than this a window of the wall is as good as straight.</summary>
    private static readonly Angle LeastLocalArc = Angle.FromDegrees(10);

    /// <summary>The radius of the whole turn.</summary>
    /// <param name="outline">The outline, corners at even spacing.</param>
    /// <param name="sources">Its causes of error.</param>
    /// <param name="stretch">The wall's corners in the outline's order.</param>
    /// <param name="where">Floor or roof, for messages.</param>
    /// <returns>The radius, or one of <see cref="ArcProblems"/>.</returns>
    public static Result<ArcRadius> Of(Outline outline, IReadOnlyList<OutlineErrorSource> sources, IReadOnlyList<int> stretch, string where)
    {
        var window = Math.Max(2, (int)Math.Round(DirectionWindowMm / Spacing(outline, stretch)));
        if (stretch.Count < (2 * window) + 8)
        {
            return ArcProblems.TooFewPoints(where, stretch.Count, (2 * window) + 8);
        }

        var turned = Turned(outline, stretch, window);
        var whole = turned[^1];
        if (Math.Abs(whole) * (ToShare - FromShare) < ArcRadius.ShortestArc.Radians)
        {
            return ArcProblems.TooFlat(where, Angle.FromRadians(whole * (ToShare - FromShare)));
        }

        var from = Array.FindIndex(turned, t => t / whole >= FromShare);
        var to = Array.FindIndex(turned, t => t / whole >= ToShare);
        return ArcRadius.OfStretch(outline, sources, [.. stretch.Skip(from).Take(to - from + 1)], where);
    }

    /// <summary>The radius place by place, over windows of 10 mm; where a window turns by less than 10° there is none.</summary>
    /// <returns>The middle of each window and its radius, the arc positive where the wall turns as the whole wall does.</returns>
    public static IReadOnlyList<LocalRadius> Along(
        Outline outline, IReadOnlyList<OutlineErrorSource> sources, IReadOnlyList<int> stretch)
    {
        var spacing = Spacing(outline, stretch);
        var (length, step) = ((int)Math.Round(LocalWindowMm / spacing), Math.Max(1, (int)Math.Round(LocalStepMm / spacing)));
        var window = Math.Max(2, (int)Math.Round(DirectionWindowMm / spacing));
        if (stretch.Count <= length || stretch.Count < (2 * window) + 8)
        {
            return [];
        }

        var sign = Math.Sign(Turned(outline, stretch, window)[^1]);
        var radii = new List<LocalRadius>();
        for (var from = 0; from + length < stretch.Count; from += step)
        {
            int[] part = [.. stretch.Skip(from).Take(length + 1)];
            if (ArcRadius.OfStretch(outline, sources, part, "wall", LeastLocalArc).TryGet(out var radius, out _))
            {
                radii.Add(new(outline[part[length / 2]], radius with { Arc = sign < 0 ? -radius.Arc : radius.Arc }));
            }
        }

        return radii;
    }

    private static double Spacing(Outline outline, IReadOnlyList<int> stretch) =>
        stretch.Count < 2 ? 1 : Enumerable.Range(1, stretch.Count - 1).Average(k => outline[stretch[k - 1]].DistanceTo(outline[stretch[k]]));

    /// <summary>How far the wall has turned up to each corner, rad; corners nearer than the window to an end keep the end's direction.</summary>
    private static double[] Turned(Outline outline, IReadOnlyList<int> stretch, int window)
    {
        var turned = new double[stretch.Count];
        double? before = null;
        for (var k = 0; k < stretch.Count; k++)
        {
            var middle = Math.Clamp(k, window, stretch.Count - 1 - window);
            var (a, b) = (outline[stretch[middle - window]], outline[stretch[middle + window]]);
            var direction = Math.Atan2(b.YMm - a.YMm, b.XMm - a.XMm);
            turned[k] = before is { } last ? turned[k - 1] + Math.IEEERemainder(direction - last, 2 * Math.PI) : 0;
            before = direction;
        }

        return turned;
    }
}
