using MathNet.Numerics.LinearAlgebra;

namespace SectionScan.Imaging.Edges;

/// <summary>Learns how a slice's wall leans from the places where both the face's edge and the wall's foot are clear.</summary>
internal static class FlareEstimate
{
    private const double StepAcrossMm = 0.05;
    private const double BesideMm = 0.3;

    // A strip narrower than this does not show two edges.
    private const double LeastStripMm = 0.3;
    private const double LeastWidthMm = 0.25;
    private const float ClearEdge = 0.45f;
    private const double LeastSpreadMm = 0.03;
    private const int FewestPlaces = 12;

    // A strip that a wall square to the face would not show is a wall only when it has the face's tint: the shadow beside a slice looks the
    // same in light.
    private const float WallTint = 0.4f;

    // Neighbouring places are not independent: count one in ten.
    private const double PlacesToOne = 10;
    private const double AgreeingSpreads = 2.5;
    private const int Rounds = 8;

    // Length of the mean normal from which the places lie on one side of the slice.
    private const double OneSide = 0.8;

    /// <summary>Estimates the flare.</summary>
    /// <param name="sampler">Reads the photo in the plane of the face.</param>
    /// <param name="curve">The traced edge of the face.</param>
    /// <param name="usualMm">The spread that flares usually have, mm at the wall's foot.</param>
    /// <returns>The flare and its standard uncertainty, mm; none with the usual spread when too few places show a wall.</returns>
    public static (WallFlare Flare, double UncertaintyMm) From(ProfileSampler sampler, ClosedCurve curve, double usualMm)
    {
        var seen = Observe(sampler, curve, usualMm);
        if (seen.Count < FewestPlaces)
        {
            return (WallFlare.None, usualMm);
        }

        // By absolute distances first, so that a minority of wrong feet does not count.
        var weights = new double[seen.Count];
        Array.Fill(weights, 1);
        var fit = Fit(seen, weights, usualMm, LeastSpreadMm);
        for (var round = 0; round < Rounds; round++)
        {
            for (var i = 0; i < weights.Length; i++)
            {
                weights[i] = LeastSpreadMm / Math.Max(LeastSpreadMm, Math.Abs(seen[i].FlareMm - fit.AtMm(seen[i].Normal)));
            }

            fit = Fit(seen, weights, usualMm, LeastSpreadMm);
        }

        double[] misses = [.. seen.Select(o => Math.Abs(o.FlareMm - fit.AtMm(o.Normal)))];
        var spread = Math.Max(LeastSpreadMm, 1.4826 * misses.Order().ElementAt(misses.Length / 2));
        var agreeing = seen.Where((_, i) => misses[i] < AgreeingSpreads * spread).ToList();
        if (spread > usualMm || agreeing.Count < Math.Max(FewestPlaces, 0.5 * seen.Count))
        {
            return (WallFlare.None, usualMm);
        }

        // Most cuts are square: a flare no larger than its own uncertainty is hardly believed.
        var flare = Fit(agreeing, [.. agreeing.Select(_ => 1.0)], usualMm, spread);
        var uncertainty = Math.Sqrt((spread * spread * PlacesToOne / agreeing.Count) + (LeastSpreadMm * LeastSpreadMm));
        var square = agreeing.Average(o => flare.AtMm(o.Normal) * flare.AtMm(o.Normal));
        var believed = square / (square + (uncertainty * uncertainty));
        return (new(flare.AllRoundMm * believed, flare.AlongXMm * believed, flare.AlongYMm * believed), uncertainty);
    }

    /// <summary>The flare by weighted least squares. Places that look one way do not tell whether the wall leans so all round (a taper) or that
    /// way only (a cut askew): between the two lies half of each. Only places on several sides tell them apart.</summary>
    private static WallFlare Fit(
        List<((double X, double Y) Normal, double FlareMm)> seen, double[] weights, double usualMm, double spreadMm)
    {
        var total = weights.Sum();
        var mean = weights.Select((w, i) => w * seen[i].FlareMm).Sum() / total;
        var (x, y) = (weights.Select((w, i) => w * seen[i].Normal.X).Sum() / total, weights.Select((w, i) => w * seen[i].Normal.Y).Sum() / total);
        var oneWay = Math.Sqrt((x * x) + (y * y));
        if (oneWay > OneSide)
        {
            return new(0.5 * mean, 0.5 * mean * x / oneWay, 0.5 * mean * y / oneWay);
        }

        // The usual spread as a prior, half of it a taper and half askew.
        var information = Matrix<double>.Build.DenseDiagonal(3, 2 / (usualMm * usualMm));
        var sum = Vector<double>.Build.Dense(3);
        for (var i = 0; i < seen.Count; i++)
        {
            var row = Vector<double>.Build.DenseOfArray([1, seen[i].Normal.X, seen[i].Normal.Y]);
            var certain = weights[i] / (PlacesToOne * spreadMm * spreadMm);
            information += certain * row.OuterProduct(row);
            sum += certain * seen[i].FlareMm * row;
        }

        var found = information.Cholesky().Solve(sum);
        return new(found[0], found[1], found[2]);
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
        if (widest + play < LeastStripMm)
        {
            return seen;
        }

        using var band = new BandProfiles(sampler, curve, BesideMm, BesideMm, widest + play, StepAcrossMm, 1);
        var (leaving, edges, lit) = (new float[band.Offsets], new float[band.Offsets], new float[band.Offsets]);
        var origin = (int)Math.Round(BesideMm / StepAcrossMm);
        var share = sampler.HeightMm / sampler.Camera.HeightMm;
        for (var i = 0; i < strips.Length; i++)
        {
            var mustShow = strips[i] >= LeastStripMm;
            if (strips[i] + play < LeastStripMm)
            {
                continue;
            }

            band.FindEdges(i, leaving, edges, lit);
            var faceAt = StrongestOf(leaving, 0, 2 * origin);
            var first = faceAt + (int)Math.Round(Math.Max(LeastWidthMm, strips[i] - play) / StepAcrossMm);
            var last = Math.Min(edges.Length - 1, faceAt + (int)Math.Round((strips[i] + play) / StepAcrossMm));
            var footAt = StrongestOf(edges, first, last);
            if (footAt < 0 || edges[footAt] <= ClearEdge || leaving[faceAt] <= ClearEdge
                || !(mustShow || band.FaceTintBetween(i, faceAt, footAt) > WallTint))
            {
                continue;
            }

            seen.Add((curve.Normals[i], (((footAt - faceAt) * StepAcrossMm) - strips[i]) / (1 - share)));
        }

        return seen;
    }

    private static int StrongestOf(float[] evidence, int first, int last)
    {
        var strongest = -1;
        for (var k = Math.Max(0, first); k <= last; k++)
        {
            strongest = strongest < 0 || evidence[k] > evidence[strongest] ? k : strongest;
        }

        return strongest;
    }
}
