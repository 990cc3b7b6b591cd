using MathNet.Numerics.LinearAlgebra;

namespace SectionScan.Imaging.Edges;

/// <summary>Learns how a slice's wall leans from the places where both the face's edge and the wall's foot are clear.</summary>
internal static class FlareEstimate
{
    private const double StepAcrossMm = 0.05;

    // A strip narrower than this does not show two edges.
    private const double LeastStripMm = 0.6;
    private const float ClearEdge = 0.45f;
    private const int Rounds = 6;

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

        // Robust least squares with the usual spread as prior: what the places do not tell stays near zero.
        var noise = 0.08;
        var weights = Enumerable.Repeat(1.0, seen.Count).ToArray();
        var solution = Vector<double>.Build.Dense(3);
        var normal = Matrix<double>.Build.Dense(3, 3);
        for (var round = 0; round < Rounds; round++)
        {
            normal.Clear();
            var right = Vector<double>.Build.Dense(3);
            for (var i = 0; i < seen.Count; i++)
            {
                double[] basis = [1, seen[i].Normal.X, seen[i].Normal.Y];
                for (var a = 0; a < 3; a++)
                {
                    for (var b = 0; b < 3; b++)
                    {
                        normal[a, b] += weights[i] * basis[a] * basis[b];
                    }

                    right[a] += weights[i] * basis[a] * seen[i].FlareMm;
                }
            }

            for (var a = 0; a < 3; a++)
            {
                normal[a, a] += noise * noise / (usualMm * usualMm) * 4;
            }

            solution = normal.Solve(right);
            for (var i = 0; i < seen.Count; i++)
            {
                var off = (seen[i].FlareMm - solution[0] - (solution[1] * seen[i].Normal.X) - (solution[2] * seen[i].Normal.Y)) / (2.5 * noise);
                weights[i] = Math.Abs(off) >= 1 ? 0 : Math.Pow(1 - (off * off), 2);
            }

            noise = Math.Max(0.03, noise * 0.8);
        }

        var agreeing = weights.Sum();
        if (agreeing < 0.3 * seen.Count)
        {
            return (WallFlare.None, usualMm);
        }

        // Neighbouring places are not independent: count one in ten.
        var covariance = normal.Inverse() * (noise * noise * 10);
        var uncertainty = Math.Min(usualMm, Math.Sqrt(covariance[0, 0] + (0.5 * (covariance[1, 1] + covariance[2, 2]))) + 0.02);
        return (new(solution[0], solution[1], solution[2]), uncertainty);
    }

    private static List<((double X, double Y) Normal, double FlareMm)> Observe(ProfileSampler sampler, ClosedCurve curve, double usualMm)
    {
        var seen = new List<((double, double), double)>();
        var strips = new double[curve.Points.Length];
        for (var i = 0; i < strips.Length; i++)
        {
            strips[i] = WallStrip.WidthMm(curve.Points[i], curve.Normals[i], sampler.Camera, sampler.HeightMm);
        }

        var play = (2.5 * usualMm) + 0.1;
        var widest = strips.Max();
        if (widest < LeastStripMm)
        {
            return seen;
        }

        var band = new BandProfiles(sampler, curve, 0.3, 0.3, widest + play, StepAcrossMm, 1);
        var (leaving, edges) = (new float[band.Offsets], new float[band.Offsets]);
        for (var i = 0; i < strips.Length; i++)
        {
            if (strips[i] < LeastStripMm)
            {
                continue;
            }

            band.FindEdges(i, leaving, edges);
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
