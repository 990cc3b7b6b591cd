namespace SectionScan.Imaging.Edges;

/// <summary>From single readings to a steady edge: what stands out alone (bubble, burr, speck) is left out, noise is evened out
/// along the outline without shrinking it.</summary>
internal static class EdgeSmoothing
{
    private const double LongestReach = 2;
    private const double LoneLengthMm = 0.75;

    /// <summary>A parabola fitted by weighted robust least squares to the readings round each place; its middle is the edge there.</summary>
    /// <param name="readings">Readings at even steps round a closed curve.</param>
    /// <param name="stepMm">The step along the curve.</param>
    /// <param name="halfWidthMm">Readings up to this far to each side count.</param>
    /// <returns>The offset at each place, mm, and how much the readings scatter about it (robust standard deviation), mm.</returns>
    /// <remarks>A. Savitzky and M. J. E. Golay, Anal. Chem. 36 (1964) 1627: a local parabola keeps curvature, unlike a mean; weights
    /// of J. W. Tukey's biweight (both cited from memory).</remarks>
    public static (double[] OffsetsMm, double ScatterMm) Smooth(EdgeReading[] readings, double stepMm, double halfWidthMm)
    {
        var n = readings.Length;
        var reach = Math.Max(2, (int)Math.Round(halfWidthMm / stepMm));
        var usual = Median([.. readings.Select(r => r.StandardUncertaintyMm)]);
        var trust = Array.ConvertAll(readings, r => Math.Min(1, usual * usual / (r.StandardUncertaintyMm * r.StandardUncertaintyMm)));
        var offsets = Array.ConvertAll(readings, r => r.OffsetMm);

        // Where the edge is faint more of its neighbours are asked.
        var reaches = Array.ConvertAll(
            readings, r => Math.Min(n / 6, (int)Math.Round(reach * Math.Clamp(r.StandardUncertaintyMm / usual, 1, LongestReach))));
        // What stands out from the median of a stretch twice a bubble's length is left out; a longer run is the edge itself.
        var smooth = RunningMedian.Of(offsets, (int)Math.Round(LoneLengthMm / stepMm));
        double scatter = 0;
        for (var round = 0; round < 2; round++)
        {
            scatter = Math.Max(1e-4, 1.4826 * Median([.. offsets.Zip(smooth, (a, b) => Math.Abs(a - b))]));
            var weights = new double[n];
            for (var i = 0; i < n; i++)
            {
                var off = (offsets[i] - smooth[i]) / Math.Max(4.5 * scatter, 2.5 * readings[i].StandardUncertaintyMm);
                weights[i] = Math.Abs(off) >= 1 ? 1e-4 : trust[i] * Math.Pow(1 - (off * off), 2);
            }

            smooth = Fit(offsets, weights, reaches);
        }

        return (smooth, scatter);
    }

    private static double[] Fit(double[] offsets, double[] weights, int[] reaches)
    {
        var n = offsets.Length;
        var fitted = new double[n];
        for (var i = 0; i < n; i++)
        {
            var reach = reaches[i];
            double s0 = 1e-12, s1 = 0, s2 = 0, s3 = 0, s4 = 0, t0 = 0, t1 = 0, t2 = 0;
            for (var k = -reach; k <= reach; k++)
            {
                var j = (((i + k) % n) + n) % n;
                var x = (double)k / reach;
                var w = weights[j] * (1 - (Math.Abs(x) * 0.7));
                var (x2, y) = (x * x, offsets[j]);
                s0 += w;
                s1 += w * x;
                s2 += w * x2;
                s3 += w * x2 * x;
                s4 += w * x2 * x2;
                t0 += w * y;
                t1 += w * x * y;
                t2 += w * x2 * y;
            }

            fitted[i] = Middle(s0, s1, s2 + 1e-12, s3, s4 + 1e-12, t0, t1, t2);
        }

        return fitted;
    }

    /// <summary>The constant term of the weighted parabola, by Cramer's rule.</summary>
    private static double Middle(double s0, double s1, double s2, double s3, double s4, double t0, double t1, double t2)
    {
        var whole = (s0 * ((s2 * s4) - (s3 * s3))) - (s1 * ((s1 * s4) - (s2 * s3))) + (s2 * ((s1 * s3) - (s2 * s2)));
        var part = (t0 * ((s2 * s4) - (s3 * s3))) - (s1 * ((t1 * s4) - (s3 * t2))) + (s2 * ((t1 * s3) - (s2 * t2)));
        return Math.Abs(whole) > 1e-12 ? part / whole : t0 / s0;
    }

    private static double Median(double[] values)
    {
        Array.Sort(values);
        return values[values.Length / 2];
    }
}
