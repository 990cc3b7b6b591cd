namespace SectionScan.Imaging.Edges;

/// <summary>Learns how a slice's wall leans from the places where both the face's edge and the wall's foot are clear.</summary>
internal static class FlareEstimate
{
    private const double StepAcrossMm = 0.05;

    // A strip narrower than this does not show two edges.
    private const double LeastStripMm = 0.3;
    private const float ClearEdge = 0.45f;
    private const double LeastSpreadMm = 0.03;

    /// <summary>Estimates the flare.</summary>
    /// <param name="sampler">Reads the photo in the plane of the face.</param>
    /// <param name="curve">The traced edge of the face.</param>
    /// <param name="usualMm">The spread that flares usually have, mm at the wall's foot.</param>
    /// <returns>The flare and its standard uncertainty, mm; none with the usual spread when too few places show a wall.</returns>
    public static (WallFlare Flare, double UncertaintyMm) From(ProfileSampler sampler, ClosedCurve curve, double usualMm)
    {
        var seen = Observe(sampler, curve, usualMm);
        if (seen.Count < 12)
        {
            return (WallFlare.None, usualMm);
        }

        // The places that show a wall look more or less one way. What they tell is how the wall leans there; whether it leans so all
        // round (a taper) or that way only (a cut askew) they do not tell. Between the two lies half of each.
        var flares = seen.Select(o => o.FlareMm).Order().ToArray();
        var middle = flares[flares.Length / 2];
        var spread = Math.Max(LeastSpreadMm, 1.4826 * flares.Select(f => Math.Abs(f - middle)).Order().ElementAt(flares.Length / 2));
        var agreeing = seen.Where(o => Math.Abs(o.FlareMm - middle) < 2.5 * spread).ToList();
        if (spread > usualMm || agreeing.Count < 0.5 * seen.Count)
        {
            return (WallFlare.None, usualMm);
        }

        var mean = agreeing.Average(o => o.FlareMm);

        // Neighbouring places are not independent: count one in ten.
        var ownUncertainty = Math.Sqrt((spread * spread * 10 / agreeing.Count) + (LeastSpreadMm * LeastSpreadMm));
        var believed = mean * mean * mean / ((mean * mean) + (ownUncertainty * ownUncertainty));
        var (x, y) = (agreeing.Average(o => o.Normal.X), agreeing.Average(o => o.Normal.Y));
        var length = Math.Sqrt((x * x) + (y * y));
        var (dx, dy) = length > 0.2 ? (x / length, y / length) : (0, 0);
        var share = length > 0.2 ? 0.5 : 1;
        return (new(believed * share, believed * 0.5 * dx, believed * 0.5 * dy), ownUncertainty);
    }

    private static List<((double X, double Y) Normal, double FlareMm)> Observe(ProfileSampler sampler, ClosedCurve curve, double usualMm)
    {
        var seen = new List<((double, double), double)>();
        var strips = new double[curve.Points.Length];
        for (var i = 0; i < strips.Length; i++)
        {
            strips[i] = WallStrip.WidthMm(curve.Points[i], curve.SteadyNormals[i], sampler.Camera, sampler.HeightMm);
        }

        var play = (2.5 * usualMm) + 0.1;
        var widest = strips.Max();
        if (widest < LeastStripMm)
        {
            return seen;
        }

        using var band = new BandProfiles(sampler, curve, 0.3, 0.3, widest + play, StepAcrossMm, 1);
        var (leaving, edges, lit) = (new float[band.Offsets], new float[band.Offsets], new float[band.Offsets]);
        for (var i = 0; i < strips.Length; i++)
        {
            if (strips[i] < LeastStripMm)
            {
                continue;
            }

            band.FindEdges(i, leaving, edges, lit);
            var origin = (int)Math.Round(0.3 / StepAcrossMm);
            var first = origin + (int)Math.Round(Math.Max(0.25, strips[i] - play) / StepAcrossMm);
            var last = Math.Min(edges.Length - 1, origin + (int)Math.Round((strips[i] + play) / StepAcrossMm));
            var strongest = -1;
            for (var k = first; k <= last; k++)
            {
                strongest = strongest < 0 || edges[k] > edges[strongest] ? k : strongest;
            }

            var faceEdge = leaving.AsSpan(origin - 3, 7).ToArray().Max();
            if (strongest >= 0 && edges[strongest] > ClearEdge && faceEdge > ClearEdge)
            {
                var width = (strongest - origin) * StepAcrossMm;
                var share = sampler.HeightMm / sampler.Camera.HeightMm;
                seen.Add((curve.Normals[i], (width - strips[i]) / (1 - share)));
            }
        }

        return seen;
    }
}
