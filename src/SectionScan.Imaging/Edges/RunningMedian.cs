namespace SectionScan.Imaging.Edges;

/// <summary>The median of each value and its neighbours in a closed series.</summary>
internal static class RunningMedian
{
    /// <summary>Works out the medians, in a sorted window that loses one value and gains one at each place.</summary>
    /// <param name="values">The series; its end meets its start.</param>
    /// <param name="reach">How many neighbours to each side count.</param>
    public static double[] Of(ReadOnlySpan<double> values, int reach)
    {
        var n = values.Length;
        var window = new double[(2 * reach) + 1];
        for (var k = -reach; k <= reach; k++)
        {
            window[k + reach] = values[(((k % n) + n) % n)];
        }

        Array.Sort(window);
        var medians = new double[n];
        for (var i = 0; i < n; i++)
        {
            medians[i] = window[reach];
            Replace(window, values[(((i - reach) % n) + n) % n], values[(i + reach + 1) % n]);
        }

        return medians;
    }

    private static void Replace(double[] sorted, double old, double added)
    {
        var at = Array.BinarySearch(sorted, old);
        while (at > 0 && sorted[at - 1] > added)
        {
            sorted[at] = sorted[at - 1];
            at--;
        }

        while (at < sorted.Length - 1 && sorted[at + 1] < added)
        {
            sorted[at] = sorted[at + 1];
            at++;
        }

        sorted[at] = added;
    }
}
