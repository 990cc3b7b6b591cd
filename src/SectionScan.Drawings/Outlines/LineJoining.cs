using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Drawings.Outlines;

/// <summary>Joins open lines of one layer whose ends meet into longer ones, and closes those that come back to their beginning.</summary>
internal static class LineJoining
{
    /// <summary>Joins.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="reach">How far ends may lie apart and still meet, drawing units.</param>
    /// <param name="where">The file, for the message of a refusal.</param>
    /// <returns>The joined lines, or <c>drawing-branches</c> when three ends meet in one point.</returns>
    public static Result<IReadOnlyList<DrawnLine>> Join(IReadOnlyList<DrawnLine> lines, double reach, string where)
    {
        var joined = new List<DrawnLine>(lines.Where(line => line.IsClosed));
        foreach (var layer in lines.Where(line => !line.IsClosed && line.Points.Count > 1).GroupBy(line => line.Layer, StringComparer.Ordinal))
        {
            var open = layer.ToList();
            if (Branch(open, reach) is { } branch)
            {
                return OutlineFileProblems.Branches(where, layer.Key, branch.XMm, branch.YMm);
            }

            while (open.Count > 0)
            {
                joined.Add(Chain(open, reach));
            }
        }

        return joined;
    }

    private static DrawnLine Chain(List<DrawnLine> open, double reach)
    {
        var first = open[^1];
        open.RemoveAt(open.Count - 1);
        var chain = new LinkedList<SectionPoint>(first.Points);
        var isGrowing = true;
        while (isGrowing && !(chain.Count > 2 && chain.First!.Value.DistanceTo(chain.Last!.Value) <= reach))
        {
            isGrowing = Grow(chain, open, reach);
        }

        var points = chain.ToList();
        var isClosed = points.Count > 3 && points[0].DistanceTo(points[^1]) <= reach;
        if (isClosed)
        {
            points.RemoveAt(points.Count - 1);
        }

        return new(first.Layer, points, isClosed);
    }

    private static bool Grow(LinkedList<SectionPoint> chain, List<DrawnLine> open, double reach)
    {
        for (var i = 0; i < open.Count; i++)
        {
            var points = open[i].Points;
            var (atLast, atFirst) = (chain.Last!.Value, chain.First!.Value);
            if (points[0].DistanceTo(atLast) <= reach)
            {
                foreach (var point in points.Skip(1))
                {
                    chain.AddLast(point);
                }
            }
            else if (points[^1].DistanceTo(atLast) <= reach)
            {
                foreach (var point in points.Reverse().Skip(1))
                {
                    chain.AddLast(point);
                }
            }
            else if (points[^1].DistanceTo(atFirst) <= reach)
            {
                foreach (var point in points.Reverse().Skip(1))
                {
                    chain.AddFirst(point);
                }
            }
            else if (points[0].DistanceTo(atFirst) <= reach)
            {
                foreach (var point in points.Skip(1))
                {
                    chain.AddFirst(point);
                }
            }
            else
            {
                continue;
            }

            open.RemoveAt(i);
            return true;
        }

        return false;
    }

    // Ends sorted along x: only near ones need to be compared.
    private static SectionPoint? Branch(List<DrawnLine> open, double reach)
    {
        var ends = open.SelectMany(line => new[] { line.Points[0], line.Points[^1] }).OrderBy(end => end.XMm).ToList();
        for (var i = 0; i < ends.Count; i++)
        {
            var meeting = 1;
            for (var j = i + 1; j < ends.Count && ends[j].XMm - ends[i].XMm <= reach; j++)
            {
                meeting += ends[j].DistanceTo(ends[i]) <= reach ? 1 : 0;
            }

            if (meeting > 2)
            {
                return ends[i];
            }
        }

        return null;
    }
}
