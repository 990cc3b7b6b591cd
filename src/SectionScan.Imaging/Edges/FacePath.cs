using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace SectionScan.Imaging.Edges;

/// <summary>The closed path of least cost through a band: for each place along a curve one of several offsets, neighbours not far
/// apart.</summary>
/// <remarks>Dynamic programming after A. J. Viterbi, 1967; closed by going round twice and keeping the middle (both cited from
/// memory).</remarks>
internal static class FacePath
{
    private static readonly int Lanes = Vector256<float>.Count;

    /// <summary>Finds the path.</summary>
    /// <param name="costs">Cost of each offset at each place: places × offsets, row by row.</param>
    /// <param name="places">How many places, closed.</param>
    /// <param name="offsets">How many offsets.</param>
    /// <param name="stepPenalty">Cost per offset step between neighbours.</param>
    /// <param name="mostSteps">The most steps between neighbours.</param>
    /// <returns>The chosen offset's index at each place.</returns>
    public static int[] Cheapest(float[] costs, int places, int offsets, float stepPenalty, int mostSteps)
    {
        // Half a turn of lead-in and lead-out makes the ends agree.
        var lead = places / 2;
        var total = places + (2 * lead);
        var width = (offsets + Lanes - 1) & -Lanes;
        var from = new short[total * width];

        // Beyond both ends of a row nothing is cheap enough to come from.
        var (cost, next) = (new float[width + (2 * mostSteps)], new float[width + (2 * mostSteps)]);
        Array.Fill(cost, float.MaxValue);
        Array.Fill(next, float.MaxValue);
        costs.AsSpan(Row(0) * offsets, offsets).CopyTo(cost.AsSpan(mostSteps));
        for (var t = 1; t < total; t++)
        {
            Cheapest(cost, next, from.AsSpan(t * width, width), stepPenalty, mostSteps);
            var unary = costs.AsSpan(Row(t) * offsets, offsets);
            for (var k = 0; k < offsets; k++)
            {
                next[mostSteps + k] += unary[k];
            }

            next.AsSpan(mostSteps + offsets).Fill(float.MaxValue);
            (cost, next) = (next, cost);
        }

        var at = Array.IndexOf(cost, cost.Min()) - mostSteps;
        var path = new int[places];
        for (var t = total - 1; t >= 0; t--)
        {
            if (t >= lead && t < lead + places)
            {
                path[Row(t)] = at;
            }

            at += t > 0 ? from[(t * width) + at] : 0;
        }

        return path;

        int Row(int t) => (((t - lead) % places) + places) % places;
    }

    /// <summary>For each offset the cheapest way to it, eight offsets at a time; of equals the one from farthest inside.</summary>
    private static void Cheapest(float[] cost, float[] next, Span<short> from, float stepPenalty, int mostSteps)
    {
        ref var source = ref MemoryMarshal.GetArrayDataReference(cost);
        ref var target = ref MemoryMarshal.GetArrayDataReference(next);
        ref var steps = ref MemoryMarshal.GetReference(from);
        for (var k = 0; k < from.Length; k += Lanes)
        {
            var best = Vector256.Create(float.MaxValue);
            var step = Vector256<int>.Zero;
            for (var d = -mostSteps; d <= mostSteps; d++)
            {
                var candidate = Vector256.LoadUnsafe(ref source, (nuint)(k + mostSteps + d)) + Vector256.Create(stepPenalty * Math.Abs(d));
                var isCheaper = Vector256.LessThan(candidate, best);
                best = Vector256.ConditionalSelect(isCheaper, candidate, best);
                step = Vector256.ConditionalSelect(isCheaper.AsInt32(), Vector256.Create(d), step);
            }

            best.StoreUnsafe(ref target, (nuint)(k + mostSteps));
            Vector128.Narrow(step.GetLower(), step.GetUpper()).StoreUnsafe(ref steps, (nuint)k);
        }
    }
}
