using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Edges;

/// <summary>Follows the edge of a face to about a pixel: the place where, coming from the face, its colour is left for good. Where
/// a wall shows below the face, its foot is looked for too, so that a wall lit like the face is not taken for it.</summary>
internal static class FaceTracer
{
    private const double StepAlongMm = 0.3;
    private const double StepAcrossMm = 0.05;

    // A wall strip narrower than this melts into one edge.
    private const double LeastStripMm = 0.22;
    private const float PassedEdgeCost = 0.7f;

    // Edges closer than this are one edge's own blur.
    private const int ClearSteps = 4;

    /// <summary>Traces the face's edge.</summary>
    /// <param name="sampler">Reads the photo in the plane of the face.</param>
    /// <param name="rough">The rough outline in the plane of the face.</param>
    /// <param name="reach">How far from it the edge may be, and what is known of the wall.</param>
    /// <param name="direction">+1: the face is inside the curve (a slice); −1: the face is outside (an opening).</param>
    public static ClosedCurve Trace(ProfileSampler sampler, IReadOnlyList<TargetPoint> rough, TraceReach reach, int direction)
    {
        var curve = ClosedCurve.Through(rough, StepAlongMm, reach.SmoothingMm);
        var places = curve.Points.Length;
        var strips = new double[places];
        for (var i = 0; i < places; i++)
        {
            strips[i] = direction < 0 ? 0 : reach.StripMm(curve.Points[i], curve.SteadyNormals[i], sampler);
        }

        var inward = reach.InwardMm;
        var beyond = Math.Max(0, strips.Max()) + (3 * reach.FlareUncertaintyMm);
        using var band = new BandProfiles(sampler, curve, inward, reach.OutwardMm, beyond, StepAcrossMm, direction);
        var offsets = (int)Math.Round((inward + reach.OutwardMm) / StepAcrossMm) + 1;
        var costs = new float[places * offsets];
        var play = FootWeights(reach.FlareUncertaintyMm);
        var leaving = new float[band.Offsets];
        var edges = new float[band.Offsets];
        for (var i = 0; i < places; i++)
        {
            band.FindEdges(i, leaving, edges);
            FillCosts(leaving, edges, strips[i], play, costs.AsSpan(i * offsets, offsets));
        }

        var penalty = (float)(reach.SlopePenalty * StepAcrossMm / StepAlongMm);
        var path = FacePath.Cheapest(costs, places, offsets, penalty, 12);
        var moved = curve.Moved(Array.ConvertAll(path, k => direction * ((k * StepAcrossMm) - inward)));
        return ClosedCurve.Through(moved, StepAlongMm, 0.25);
    }

    /// <summary>How much a wall's foot counts that many steps from where it is expected.</summary>
    private static float[] FootWeights(double flareUncertaintyMm)
    {
        var weights = new float[(int)Math.Ceiling(2.5 * flareUncertaintyMm / StepAcrossMm) + 1];
        for (var d = 0; d < weights.Length; d++)
        {
            var off = d * StepAcrossMm / flareUncertaintyMm;
            weights[d] = (float)Math.Exp(-0.5 * off * off);
        }

        return weights;
    }

    /// <summary>The cost of each offset as the end of the face.</summary>
    private static void FillCosts(float[] leaving, float[] edges, double stripMm, float[] play, Span<float> costs)
    {
        var passed = 0f;
        var strip = (int)Math.Round(stripMm / StepAcrossMm);
        var footCounts = stripMm >= LeastStripMm;
        for (var k = 0; k < costs.Length; k++)
        {
            // The face ends at the first clear edge: what lies behind one pays.
            passed = k > 2 * ClearSteps ? Math.Max(passed, leaving[k - (2 * ClearSteps) - 1]) : 0;
            var evidence = leaving[k];
            if (footCounts)
            {
                var foot = 0f;
                var middle = k + strip;
                var first = Math.Max(k + ClearSteps, middle - play.Length + 1);
                var last = Math.Min(edges.Length - 1, middle + play.Length - 1);
                for (var at = first; at <= last; at++)
                {
                    foot = Math.Max(foot, edges[at] * play[Math.Abs(at - middle)]);
                }

                evidence = (leaving[k] + foot) / 2;
            }

            costs[k] = 1 - evidence + (PassedEdgeCost * passed * (footCounts ? 0.5f : 1));
        }
    }
}
