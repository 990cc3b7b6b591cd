using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Profiles;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Lengthwise;

/// <summary>Finds floor, roof and the two cut ends in the outline of a mould half or a casting cut lengthwise.</summary>
/// <remarks>The ends are the two opposite straight sides between four corners. Edges read from photos are rounded at corners, so walls are
/// read clear of them and carried on, as parabolas, to the ends' lines.</remarks>
public static class LengthwiseFinder
{
    private const double SpacingMm = 0.2;
    private const int MostPoints = 4000;

    /// <summary>How near a corner nothing is read, mm.</summary>
    private const double ClearMm = 2.5;

    /// <summary>The stretch of wall that is carried on to the end, mm.</summary>
    private const double CarriedMm = 6;

    /// <summary>A cut end strays less than this from a straight line, rms, mm.</summary>
    private const double StraightWithinMm = 0.15;

    private const double ShortestEndMm = 8;

    /// <summary>Walls whose lengths differ by less than this share are told apart by up and down.</summary>
    private const double SameLengthShare = 0.02;

    /// <summary>Finds the shape.</summary>
    /// <param name="name">What to call it, also in messages.</param>
    /// <param name="outline">The whole outline, mm, y toward the roof.</param>
    /// <param name="sources">Its causes of error.</param>
    /// <param name="faceIsRight">True when the manifold face is the end more to the right.</param>
    /// <returns>The shape, or one of <see cref="LengthwiseProblems"/>. The floor is the shorter wall, the inside of the turn; in a
    /// straight port the lower one.</returns>
    public static Result<LengthwiseShape> Find(string name, Outline outline, IReadOnlyList<OutlineErrorSource> sources, bool faceIsRight = false)
    {
        ArgumentNullException.ThrowIfNull(outline);
        var length = Enumerable.Range(0, outline.Count).Sum(i => outline[i].DistanceTo(outline[i + 1]));
        var count = Math.Clamp((int)(length / SpacingMm), 200, MostPoints);
        if (!Outline.From(outline.Resampled(count), name).TryGet(out var even, out var problem))
        {
            return problem;
        }

        var spacing = length / count;
        var corners = OutlineCorners.Of(even, spacing);
        if (BestEnds(even, corners, spacing) is not { } ends)
        {
            return LengthwiseProblems.EndsMissing(name, Sides(corners, even.Count).Count(side => IsEnd(even, side, spacing)));
        }

        var (first, second) = (WallAlong(even, ends.A, ends.B, spacing), WallAlong(even, ends.B, ends.A, spacing));

        // Counter-clockwise the first wall runs from end A to end B, the second from B back to A.
        var aIsFace = faceIsRight ? ends.A.Line.Middle.XMm > ends.B.Line.Middle.XMm : ends.A.Line.Middle.XMm < ends.B.Line.Middle.XMm;
        var firstIsFloor = Math.Abs(first.Line.LengthMm - second.Line.LengthMm) > SameLengthShare * Math.Max(first.Line.LengthMm, second.Line.LengthMm)
            ? first.Line.LengthMm < second.Line.LengthMm
            : MeanY(first.Line) < MeanY(second.Line);
        var (floor, roof) = firstIsFloor ? (first, second) : (second, first);
        var (floorLine, roofLine) = (WithFlow(floor.Line, firstIsFloor == aIsFace), WithFlow(roof.Line, firstIsFloor != aIsFace));

        // Counter-clockwise with the flow, the wall that runs with it has the port on its left.
        var axis = firstIsFloor == aIsFace ? MedialAxis.Between(floorLine, roofLine) : MedialAxis.Between(roofLine, floorLine);
        if (axis.Count < 2)
        {
            return LengthwiseProblems.NoCentreline(name);
        }

        return new LengthwiseShape(
            name, even, sources, floorLine, roofLine, new(floorLine.First, roofLine.First), new(floorLine.Last, roofLine.Last),
            floor.Stretch, roof.Stretch, axis);
    }

    private static Profile WithFlow(Profile line, bool isWithFlow) => isWithFlow ? line : new(line.Points.ToArray().Reverse());

    private static double MeanY(Profile line) => line.Even(1).Average(at => at.Place.YMm);

    private static List<(int From, int To)> Sides(IReadOnlyList<int> corners, int count) =>
        [.. Enumerable.Range(0, corners.Count).Select(k => (corners[k], corners[(k + 1) % corners.Count] + (k + 1 == corners.Count ? count : 0)))];

    private static bool IsEnd(Outline even, (int From, int To) side, double spacing) =>
        FittedLine.Of(Places(even, ClearOf(even, side, spacing))) is { } line && line.ResidualRmsMm <= StraightWithinMm && (side.To - side.From) * spacing >= ShortestEndMm;

    private static IEnumerable<int> ClearOf(Outline even, (int From, int To) side, double spacing)
    {
        var clear = (int)Math.Ceiling(ClearMm / spacing);
        return Enumerable.Range(side.From + clear, Math.Max(0, side.To - side.From - (2 * clear) + 1)).Select(i => i % even.Count);
    }

    private static IReadOnlyList<SectionPoint> Places(Outline even, IEnumerable<int> indices) => [.. indices.Select(i => even[i])];

    private static (End A, End B)? BestEnds(Outline even, IReadOnlyList<int> corners, double spacing)
    {
        var straight = Sides(corners, even.Count).Where(side => IsEnd(even, side, spacing)).ToList();
        (End A, End B)? best = null;
        var shortest = double.PositiveInfinity;
        for (var i = 0; i < straight.Count; i++)
        {
            for (var j = i + 1; j < straight.Count; j++)
            {
                // Two ends do not share a corner; a notch's sides are never both shorter than the walls between them.
                var (a, b) = (straight[i], straight[j]);
                var (between, back) = (b.From - a.To, even.Count + a.From - b.To);
                var longerEnd = Math.Max(a.To - a.From, b.To - b.From);
                var size = a.To - a.From + (b.To - b.From);
                if (Math.Min(between, back) * spacing > ClearMm && Math.Max(between, back) > longerEnd && Math.Min(between, back) > 0.25 * Math.Max(between, back)
                    && size < shortest)
                {
                    shortest = size;
                    best = (EndOf(even, a, spacing), EndOf(even, b, spacing));
                }
            }
        }

        return best;
    }

    private static End EndOf(Outline even, (int From, int To) side, double spacing) =>
        new(side.From, side.To, FittedLine.Of(Places(even, ClearOf(even, side, spacing)))!);

    private static (Profile Line, IReadOnlyList<int> Stretch) WallAlong(Outline even, End from, End to, double spacing)
    {
        var side = (from.To, to.From >= from.To ? to.From : to.From + even.Count);
        var stretch = ClearOf(even, side, spacing).ToList();
        var points = Places(even, stretch);
        var carried = Math.Min(points.Count / 2, (int)(CarriedMm / spacing));
        var start = CarriedWall.To(from.Line, [.. points.Take(carried).Reverse()]);
        var end = CarriedWall.To(to.Line, [.. points.TakeLast(carried)]);
        return (new([.. start.Reverse(), .. points, .. end]), stretch);
    }

    private sealed record End(int From, int To, FittedLine Line);
}
