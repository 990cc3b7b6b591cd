using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Comparison;

/// <summary>The discrete Fréchet distance: the shortest leash between two walkers who go along their shapes without turning back.
/// Unlike the Hausdorff distance it respects order. Unit: mm.</summary>
/// <remarks>H. Alt, M. Godau, "Computing the Fréchet distance between two polygonal curves", 1995; discrete form: T. Eiter,
/// H. Mannila, "Computing discrete Fréchet distance", 1994 (both cited from memory).</remarks>
public static class FrechetDistance
{
    /// <summary>Places along each outline; with the nearest places of the other's it is twice as many.</summary>
    private const int Places = 180;

    /// <summary>Starts tried around an outline. Trying all costs as many times more and finds the same but on shapes that
    /// have nothing to do with each other.</summary>
    private const int Starts = 6;

    /// <summary>Between two open rows of points, first to first and last to last, mm.</summary>
    /// <exception cref="ArgumentException">A row is empty.</exception>
    public static double Discrete(ReadOnlySpan<SectionPoint> first, ReadOnlySpan<SectionPoint> second)
    {
        if (first.IsEmpty || second.IsEmpty)
        {
            throw new ArgumentException("A row has at least one point.", first.IsEmpty ? nameof(first) : nameof(second));
        }

        // Row by row over first; squares of distances, the root at the end.
        var leash = new double[second.Length];
        for (var i = 0; i < first.Length; i++)
        {
            var before = i == 0 ? 0 : leash[0];
            for (var j = 0; j < second.Length; j++)
            {
                var (x, y) = (first[i].XMm - second[j].XMm, first[i].YMm - second[j].YMm);
                var apart = (x * x) + (y * y);
                var above = leash[j];
                var reach = (i, j) switch
                {
                    (0, 0) => 0,
                    (0, _) => leash[j - 1],
                    (_, 0) => above,
                    _ => Math.Min(Math.Min(above, leash[j - 1]), before),
                };
                before = above;
                leash[j] = Math.Max(apart, reach);
            }
        }

        return Math.Sqrt(leash[^1]);
    }

    /// <summary>Between two outlines, both walked counter-clockwise, mm.</summary>
    /// <remarks>Each outline is given even places and the places nearest to the other's, so that the spacing does not count as
    /// distance. A walk round starts at a place of the first outline and the nearest place on the second; six starts around are
    /// tried and the shortest leash kept. It is an upper bound of the distance over all starts, and never less than the largest
    /// distance of a place to the other outline.</remarks>
    public static double BetweenOutlines(Outline first, Outline second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var (firstEdges, secondEdges) = (new EdgeIndex(first.Points, isClosed: true), new EdgeIndex(second.Points, isClosed: true));
        var firstPlaces = WithNearest(first, firstEdges, second);
        var secondPlaces = WithNearest(second, secondEdges, first);
        var shortest = double.PositiveInfinity;
        for (var start = 0; start < Starts; start++)
        {
            var from = start * firstPlaces.Length / Starts;
            var to = NearestIndex(secondPlaces, firstPlaces[from]);
            shortest = Math.Min(shortest, Discrete(Round(firstPlaces, from), Round(secondPlaces, to)));
        }

        return shortest;
    }

    /// <summary>The even places of an outline and the places on it nearest to the other's even places, in the outline's order.</summary>
    private static SectionPoint[] WithNearest(Outline outline, EdgeIndex edges, Outline other)
    {
        var even = Array.ConvertAll(outline.Resampled(Places), edges.Nearest);
        var nearest = Array.ConvertAll(other.Resampled(Places), edges.Nearest);
        return [.. even.Concat(nearest)
            .OrderBy(foot => foot.Edge)
            .ThenBy(foot => foot.Point.DistanceTo(edges.From(foot.Edge)))
            .Select(foot => foot.Point)];
    }

    private static int NearestIndex(SectionPoint[] places, SectionPoint point)
    {
        var best = 0;
        for (var i = 1; i < places.Length; i++)
        {
            best = places[i].DistanceTo(point) < places[best].DistanceTo(point) ? i : best;
        }

        return best;
    }

    /// <summary>Once round from an index back to it.</summary>
    private static SectionPoint[] Round(SectionPoint[] places, int from) => [.. places[from..], .. places[..(from + 1)]];
}
