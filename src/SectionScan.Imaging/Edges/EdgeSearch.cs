namespace SectionScan.Imaging.Edges;

/// <summary>Looks for the place where an edge model leaves least of a profile.</summary>
internal static class EdgeSearch
{
    private const double GridPx = 0.75;

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
        var (best, least) = (about, double.MaxValue);
        var grid = GridPx * pixelMm;
        for (var s = low; s <= high + 1e-9; s += grid)
        {
            var left = model.LeftOver(profile, from, step, s, levels);
            if (left < least)
            {
                (best, least) = (s, left);
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
