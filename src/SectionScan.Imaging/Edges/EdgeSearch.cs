using System.Runtime.CompilerServices;

namespace SectionScan.Imaging.Edges;

/// <summary>Looks for the place where an edge model leaves least of a profile.</summary>
internal static class EdgeSearch
{
    private const double GridPx = 0.75;
    private const int MostOnStack = 256;

    /// <summary>The grid on which edges without a wall are looked for, with a place more at each end.</summary>
    /// <param name="model">What the edge should look like.</param>
    /// <param name="count">How many readings the profiles have.</param>
    /// <param name="fromMm">The first, from where the edge is looked for.</param>
    /// <param name="searchMm">How far to each side the edge is looked for.</param>
    /// <param name="pixelMm">Side of a pixel, mm.</param>
    public static EdgeGrid GridOf(EdgeModel model, int count, double fromMm, double searchMm, double pixelMm) =>
        new(model, count, fromMm, -searchMm - (GridPx * pixelMm), GridPx * pixelMm, Places(searchMm, pixelMm) + 2);

    /// <summary>Finds the edge: a grid first, then parabolas.</summary>
    /// <param name="light">The profile.</param>
    /// <param name="from">Its first place, mm.</param>
    /// <param name="model">What it should look like.</param>
    /// <param name="about">Where to look, mm.</param>
    /// <param name="searchMm">How far to each side.</param>
    /// <param name="pixelMm">Side of a pixel, mm.</param>
    /// <param name="solved">The grid solved beforehand, or null.</param>
    /// <returns>The edge, mm; the step of the signal there; what is left over, root mean square.</returns>
    [SkipLocalsInit]
    public static (double Offset, double Contrast, double Noise) Minimise(
        ReadOnlySpan<float> light, double from, EdgeModel model, double about, double searchMm, double pixelMm, EdgeGrid? solved = null)
    {
        var room = BlurredSteps.RoomFor(light.Length);
        var profile = new EdgeProfile(light, from, room <= MostOnStack ? stackalloc double[room] : new double[room]);
        var (first, grid, places) = (about - searchMm, GridPx * pixelMm, Places(searchMm, pixelMm));

        // Place k of the grid is at index k + 1; what lies beyond its ends is looked at only where the least lies at one.
        Span<double> left = stackalloc double[places + 2];
        if (solved is not null)
        {
            solved.LeftOver(profile, left);
        }
        else
        {
            for (var k = 0; k < places; k++)
            {
                left[k + 1] = model.LeftOver(profile, first + (k * grid), out _);
            }
        }

        var at = 0;
        for (var k = 1; k < places; k++)
        {
            at = left[k + 1] < left[at + 1] ? k : at;
        }

        var (best, least) = (first + (at * grid), left[at + 1]);
        if (solved is null && at == 0)
        {
            left[0] = model.LeftOver(profile, best - grid, out _);
        }

        if (solved is null && at == places - 1)
        {
            left[places + 1] = model.LeftOver(profile, best + grid, out _);
        }

        EdgeLevels? levels = null;
        var (before, behind) = (left[at], left[at + 2]);
        for (var round = 0; round < 2; round++)
        {
            if (round > 0)
            {
                (before, behind) = (model.LeftOver(profile, best - grid, out _), model.LeftOver(profile, best + grid, out _));
            }

            // The sum of squares is a parabola near its least.
            var bend = before - (2 * least) + behind;
            if (bend <= 0)
            {
                break;
            }

            var moved = best + Math.Clamp(0.5 * grid * (before - behind) / bend, -grid, grid);
            var there = model.LeftOver(profile, moved, out var own);
            if (there > least)
            {
                break;
            }

            (best, least, levels) = (moved, there, own);
            grid *= 0.3;
        }

        if (levels is not { } found)
        {
            model.LeftOver(profile, best, out found);
        }

        var contrast = Math.Abs(found.Face - found.Ground);
        if (model.StripMm > 0)
        {
            contrast = Math.Max(contrast, Math.Abs(found.Face - found.Wall));
        }

        return (best, contrast, Math.Sqrt(least / light.Length));
    }

    private static int Places(double searchMm, double pixelMm) => (int)Math.Floor((2 * searchMm / (GridPx * pixelMm)) + 1e-6) + 1;
}
