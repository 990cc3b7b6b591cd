namespace SectionScan.Imaging.Edges;

/// <summary>Looks for the place where an edge model leaves least of a profile.</summary>
internal static class EdgeSearch
{
    private const double GridPx = 0.75;

    // The trace is right to about this; another edge farther off must fit clearly better, or the rim of a shadow draws the edge away.
    private const double NearPx = 1.5;
    private const double FarOffPenalty = 0.3;

    /// <summary>Finds the edge: a grid first, then parabolas.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="from">Its first place, mm.</param>
    /// <param name="step">Its step, mm.</param>
    /// <param name="model">What it should look like.</param>
    /// <param name="about">Where to look, mm.</param>
    /// <param name="searchMm">How far to each side.</param>
    /// <param name="pixelMm">Side of a pixel, mm.</param>
    /// <returns>The edge, mm; the step of the signal there; what is left over, root mean square.</returns>
    public static (double Offset, double Contrast, double Noise) Minimise(
        ReadOnlySpan<float> profile, double from, double step, EdgeModel model, double about, double searchMm, double pixelMm)
    {
        Span<double> levels = stackalloc double[4];
        var (low, high) = (about - searchMm, about + searchMm);
        var (best, least, leastJudged) = (about, double.MaxValue, double.MaxValue);
        var near = Math.Max(NearPx * pixelMm, model.BlurMm);
        var grid = GridPx * pixelMm;
        for (var s = low; s <= high + 1e-9; s += grid)
        {
            var off = (s - about) / near;
            var left = model.LeftOver(profile, from, step, s, levels);
            var judged = left * (1 + (FarOffPenalty * off * off));
            if (judged < leastJudged)
            {
                (best, least, leastJudged) = (s, left, judged);
            }
        }

        for (var round = 0; round < 2; round++)
        {
            // The sum of squares is a parabola near its least.
            var (a, c) = (model.LeftOver(profile, from, step, best - grid, levels), model.LeftOver(profile, from, step, best + grid, levels));
            var bend = a - (2 * least) + c;
            if (bend <= 0)
            {
                break;
            }

            var moved = best + Math.Clamp(0.5 * grid * (a - c) / bend, -grid, grid);
            var there = model.LeftOver(profile, from, step, moved, levels);
            if (there > least)
            {
                break;
            }

            (best, least) = (moved, there);
            grid *= 0.3;
        }

        model.LeftOver(profile, from, step, best, levels);
        var contrast = Math.Abs(levels[0] - levels[1]);
        if (model.StripMm > 0)
        {
            contrast = Math.Max(contrast, Math.Abs(levels[0] - levels[3]));
        }

        return (best, contrast, Math.Sqrt(least / profile.Length));
    }
}
