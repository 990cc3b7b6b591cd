using OpenCvSharp;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Checkerboards;

/// <summary>Gives candidates their place in a chessboard's lattice, from a seed outward. Holes and the border of the picture do not
/// matter; a candidate whose squares have the wrong colour for its place is not taken.</summary>
internal sealed class LatticeGrower(Mat grey, IReadOnlyList<PixelPoint> candidates)
{
    private const double SeedTolerance = 0.2;
    private const double GrowTolerance = 0.22;
    private const double StrayTolerance = 0.12;
    private const int MostSeeds = 80;
    private const int SeedNeighbours = 8;
    private const int Reach = 2;

    /// <summary>The largest lattice that grows from any of the seeds tried, from the middle outward.</summary>
    public Lattice Grow()
    {
        var best = new Lattice(new Dictionary<(int, int), PixelPoint>(), 0);
        if (candidates.Count < 9)
        {
            return best;
        }

        var (mx, my) = (candidates.Average(p => p.X), candidates.Average(p => p.Y));
        var middle = new PixelPoint(mx, my);
        foreach (var seed in Enumerable.Range(0, candidates.Count).OrderBy(i => candidates[i].DistanceTo(middle)).Take(MostSeeds))
        {
            // What already lies in a lattice seeds no better one.
            if (best.Points.Values.Any(p => p == candidates[seed]) || Seed(seed) is not { } start)
            {
                continue;
            }

            var grown = GrowFrom(start);
            if (grown.Points.Count > best.Points.Count)
            {
                best = grown;
            }
        }

        return best;
    }

    /// <summary>A cross of five points with a sixth between two arms, right in colour.</summary>
    private Dictionary<(int Column, int Row), int>? Seed(int p)
    {
        var at = candidates[p];
        var near = Enumerable.Range(0, candidates.Count).Where(i => i != p).OrderBy(i => candidates[i].DistanceTo(at)).Take(SeedNeighbours).ToArray();
        foreach (var a in near)
        {
            foreach (var b in near)
            {
                var (u, v) = (Step(at, candidates[a]), Step(at, candidates[b]));
                var (lu, lv) = (Length(u), Length(v));
                if (((u.X * v.Y) - (u.Y * v.X)) < 0.5 * lu * lv || lu > 2 * lv || lv > 2 * lu)
                {
                    continue;
                }

                var tolerance = SeedTolerance * Math.Min(lu, lv);
                var (backA, backB) = (Near(new(at.X - u.X, at.Y - u.Y), tolerance), Near(new(at.X - v.X, at.Y - v.Y), tolerance));
                var corner = Near(new(at.X + u.X + v.X, at.Y + u.Y + v.Y), 1.5 * tolerance);
                var sign = SquareColour.Sign(grey, at, u, v);
                if (backA >= 0 && backB >= 0 && corner >= 0 && sign != 0
                    && SquareColour.Sign(grey, candidates[a], u, v) == -sign && SquareColour.Sign(grey, candidates[b], u, v) == -sign
                    && SquareColour.Sign(grey, candidates[corner], u, v) == sign)
                {
                    return new() { [(0, 0)] = p, [(1, 0)] = a, [(0, 1)] = b, [(-1, 0)] = backA, [(0, -1)] = backB, [(1, 1)] = corner };
                }
            }
        }

        return null;
    }

    private Lattice GrowFrom(Dictionary<(int Column, int Row), int> start)
    {
        var place = start;
        var used = place.Values.ToHashSet();
        var contradictions = 0;
        var first = LatticeMap.Through(Around(place, (0, 0), Reach, false))!.Value;
        var sign = SquareColour.Sign(grey, candidates[place[(0, 0)]], first.U, first.V);
        var tried = new HashSet<((int, int) Index, int Known)>();
        for (var isGrowing = true; isGrowing;)
        {
            isGrowing = false;
            foreach (var index in Empty(place))
            {
                // Looked at again only when its surroundings have changed.
                var around = Around(place, index, Reach, false);
                if (!tried.Add((index, around.Count)) || LatticeMap.Through(around) is not { } map)
                {
                    continue;
                }

                var found = Near(map.At(index.Column, index.Row), GrowTolerance * map.Spacing);
                if (found < 0)
                {
                    continue;
                }

                if (SquareColour.Sign(grey, candidates[found], map.U, map.V) != ((index.Column + index.Row) % 2 == 0 ? sign : -sign) || !used.Add(found))
                {
                    contradictions++;
                    continue;
                }

                place[index] = found;
                isGrowing = true;
            }
        }

        return new(WithoutStrays(place), contradictions);
    }

    /// <summary>Points that do not lie where their neighbours say are left out.</summary>
    private Dictionary<(int Column, int Row), PixelPoint> WithoutStrays(Dictionary<(int Column, int Row), int> place)
    {
        var kept = new Dictionary<(int Column, int Row), PixelPoint>();
        foreach (var (index, candidate) in place)
        {
            var around = Around(place, index, 1, true);
            if (around.Count < 3 || LatticeMap.Through(around) is not { } map
                || map.At(index.Column, index.Row).DistanceTo(candidates[candidate]) < StrayTolerance * map.Spacing)
            {
                kept[index] = candidates[candidate];
            }
        }

        return kept;
    }

    private static List<(int Column, int Row)> Empty(Dictionary<(int Column, int Row), int> place)
    {
        var empty = new HashSet<(int Column, int Row)>();
        foreach (var (column, row) in place.Keys)
        {
            for (var dr = -Reach; dr <= Reach; dr++)
            {
                for (var dc = -Reach; dc <= Reach; dc++)
                {
                    if (!place.ContainsKey((column + dc, row + dr)))
                    {
                        empty.Add((column + dc, row + dr));
                    }
                }
            }
        }

        // Nearest to the middle first, so that each is predicted from known neighbours.
        return [.. empty.OrderBy(e => (e.Column * e.Column) + (e.Row * e.Row)).ThenBy(e => e)];
    }

    private List<((int Column, int Row) Index, PixelPoint At)> Around(
        Dictionary<(int Column, int Row), int> place, (int Column, int Row) middle, int reach, bool withoutMiddle)
    {
        var around = new List<((int, int), PixelPoint)>();
        for (var dr = -reach; dr <= reach; dr++)
        {
            for (var dc = -reach; dc <= reach; dc++)
            {
                var index = (middle.Column + dc, middle.Row + dr);
                if ((!withoutMiddle || dr != 0 || dc != 0) && place.TryGetValue(index, out var candidate))
                {
                    around.Add((index, candidates[candidate]));
                }
            }
        }

        return around;
    }

    private int Near(PixelPoint at, double tolerancePx)
    {
        var (best, least) = (-1, tolerancePx);
        for (var i = 0; i < candidates.Count; i++)
        {
            var distance = candidates[i].DistanceTo(at);
            if (distance < least)
            {
                (best, least) = (i, distance);
            }
        }

        return best;
    }

    private static (double X, double Y) Step(PixelPoint from, PixelPoint to) => (to.X - from.X, to.Y - from.Y);

    private static double Length((double X, double Y) v) => Math.Sqrt((v.X * v.X) + (v.Y * v.Y));
}
