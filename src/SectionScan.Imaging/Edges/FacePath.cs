namespace SectionScan.Imaging.Edges;

/// <summary>The closed path of least cost through a band: for each place along a curve one of several offsets, neighbours not far
/// apart.</summary>
/// <remarks>Dynamic programming after A. J. Viterbi, 1967; closed by going round twice and keeping the middle (both cited from
/// memory).</remarks>
internal static class FacePath
{
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
        var from = new sbyte[total * offsets];
        var (cost, next) = (new float[offsets], new float[offsets]);
        costs.AsSpan(Row(0) * offsets, offsets).CopyTo(cost);
        for (var t = 1; t < total; t++)
        {
            var unary = costs.AsSpan(Row(t) * offsets, offsets);
            for (var k = 0; k < offsets; k++)
            {
                var (best, step) = (float.MaxValue, 0);
                var (low, high) = (Math.Max(-mostSteps, -k), Math.Min(mostSteps, offsets - 1 - k));
                for (var d = low; d <= high; d++)
                {
                    var candidate = cost[k + d] + (stepPenalty * Math.Abs(d));
                    if (candidate < best)
                    {
                        (best, step) = (candidate, d);
                    }
                }

                next[k] = best + unary[k];
                from[(t * offsets) + k] = (sbyte)step;
            }

            (cost, next) = (next, cost);
        }

        var at = Array.IndexOf(cost, cost.Min());
        var path = new int[places];
        for (var t = total - 1; t >= 0; t--)
        {
            if (t >= lead && t < lead + places)
            {
                path[Row(t)] = at;
            }

            at += t > 0 ? from[(t * offsets) + at] : 0;
        }

        return path;

        int Row(int t) => (((t - lead) % places) + places) % places;
    }
}
