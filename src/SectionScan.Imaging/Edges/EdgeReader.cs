namespace SectionScan.Imaging.Edges;

/// <summary>Reads the place of a face's edge below the pixel, all along a traced curve: once in light, once in tint, weighed by how
/// well each shows it. Rubber in its own contact shadow may be as bright as the paper beside it, but never of its tint.</summary>
/// <remarks>Least squares on a blurred-step model in linear light: the erf fit of M. Hagara and P. Kulla, Radioengineering 2011
/// (abstract known), with a third level where a narrow strip of wall shows between face and ground.</remarks>
internal sealed class EdgeReader
{
    private const double SearchPx = 3;
    private const double GridStepPx = 0.6;
    private const double Contradiction = 4;
    private const double StrongTint = 0.15;
    private const double NearPx = 1.5;

    // Misfits are sums over some fifty readings in units of the noise; neighbours share most of what they err in.
    private const double MisfitScale = 25;
    private const double MostMisfit = 4;
    private const float StepPenalty = 0.3f;

    private readonly ClosedCurve curve;
    private readonly EdgeSignal light;
    private readonly EdgeSignal tint;
    private readonly double[] strips;
    private readonly double pixelMm;

    /// <summary>Prepares to read.</summary>
    /// <param name="sampler">Reads the photo in the plane of the face.</param>
    /// <param name="curve">The traced edge, right to about a pixel.</param>
    /// <param name="flare">How the wall leans.</param>
    /// <param name="flareUncertaintyMm">How well that is known.</param>
    /// <param name="direction">+1 for a slice, −1 for an opening.</param>
    public EdgeReader(ProfileSampler sampler, ClosedCurve curve, WallFlare flare, double flareUncertaintyMm, int direction)
    {
        this.curve = curve;
        pixelMm = sampler.MillimetresPerPixel(curve.Points[0]);
        strips = new double[curve.Points.Length];
        for (var i = 0; i < strips.Length; i++)
        {
            strips[i] = direction < 0 ? 0 : Math.Max(0, WallStrip.WidthMm(
                curve.Points[i], curve.SteadyNormals[i], sampler.Camera, sampler.HeightMm, flare.AtMm(curve.SteadyNormals[i])));
        }

        light = new(sampler, curve, strips, flareUncertaintyMm, direction, isTint: false);
        tint = new(sampler, curve, strips, flareUncertaintyMm, direction, isTint: true);
    }

    /// <summary>Standard deviation of the blur at the edges in light, mm.</summary>
    public double BlurMm => light.BlurMm;

    /// <summary>Width of wall that shows below the face at each place, mm.</summary>
    public ReadOnlySpan<double> StripsMm => strips;

    /// <summary>Standard deviation of the blur in tint, mm.</summary>
    public double TintBlurMm => tint.BlurMm;

    /// <summary>Reads every place of the curve.</summary>
    /// <param name="known">An earlier reader of the same edge, whose blur is taken over, or null.</param>
    public EdgeReading[] ReadAll(EdgeReader? known = null)
    {
        light.Prepare(known?.BlurMm ?? 0, 0);
        tint.Prepare(known?.TintBlurMm ?? 0, light.BlurMm);
        var about = NarrowEdges();
        var readings = new EdgeReading[curve.Points.Length];
        for (var i = 0; i < readings.Length; i++)
        {
            var (inLight, inTint) = (light.Read(i, about[i]), tint.Read(i, about[i]));
            readings[i] = strips[i] > 0 ? inLight.With(inTint) : Together(inLight, inTint);
        }

        return readings;
    }

    /// <summary>Both readings together where no wall shows. Where they contradict each other, light has taken the rim of a shadow for the face's edge.</summary>
    private static EdgeReading Together(EdgeReading light, EdgeReading tint)
    {
        var apart = Math.Abs(light.OffsetMm - tint.OffsetMm);
        return tint.Contrast > StrongTint && apart > Contradiction * tint.StandardUncertaintyMm
            ? (light with { StandardUncertaintyMm = Math.Max(light.StandardUncertaintyMm, apart) }).With(tint)
            : light.With(tint);
    }

    /// <summary>Where light and tint together want the face's edge when only a narrow strip of wall shows, as one smooth path: a wall lit
    /// like the face hides the edge in light, and the trace took the wall's foot; the edge then lies a strip farther in.</summary>
    private double[] NarrowEdges()
    {
        var places = strips.Length;
        var widest = Enumerable.Range(0, places).Where(light.ShowsNarrowStrip).Select(i => strips[i]).DefaultIfEmpty(0).Max();
        if (widest == 0)
        {
            return new double[places];
        }

        var step = GridStepPx * pixelMm;
        var inward = (int)Math.Ceiling((widest + (SearchPx * pixelMm)) / step);
        var outward = (int)Math.Ceiling(SearchPx / GridStepPx);
        double[] grid = [.. Enumerable.Range(-inward, inward + outward + 1).Select(k => k * step)];
        var costs = new float[places * grid.Length];
        var misfits = new double[grid.Length];
        for (var i = 0; i < places; i++)
        {
            var row = costs.AsSpan(i * grid.Length, grid.Length);
            if (!light.ShowsNarrowStrip(i))
            {
                // The trace is believed.
                for (var k = 0; k < grid.Length; k++)
                {
                    row[k] = (float)Math.Min(MostMisfit, Math.Abs(grid[k]) / pixelMm);
                }

                continue;
            }

            Array.Clear(misfits);
            light.AddMisfits(i, grid, misfits);
            tint.AddMisfits(i, grid, misfits);
            var least = misfits.Min();
            for (var k = 0; k < grid.Length; k++)
            {
                var outside = Math.Max(grid[k] - (NearPx * pixelMm), -strips[i] - (NearPx * pixelMm) - grid[k]);
                row[k] = (float)Math.Min(MostMisfit, ((misfits[k] - least) / MisfitScale) + Math.Max(0, outside / pixelMm));
            }
        }

        var path = FacePath.Cheapest(costs, places, grid.Length, StepPenalty, 3);
        return [.. path.Select((k, i) => light.ShowsNarrowStrip(i) ? grid[k] : 0)];
    }
}
