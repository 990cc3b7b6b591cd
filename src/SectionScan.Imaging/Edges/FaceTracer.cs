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

    // Evidence of leaving the face from which a foot beyond it counts in full; how much a foot counts without it, and without lit paper
    // beyond; what is taken off an edge where wall must show, and off one straight into lit paper besides.
    private const float ClearlyLeft = 0.6f;
    private const float FootAlone = 0.95f;
    private const float ShadedFoot = 0.8f;
    private const float MissingWall = 0.1f;
    private const float MissingLitWall = 0.3f;

    // Edges closer than this are one edge's own blur.
    private const int ClearSteps = 4;

    /// <summary>Traces the face's edge.</summary>
    /// <param name="sampler">Reads the photo in the plane of the face.</param>
    /// <param name="rough">The rough outline in the plane of the face.</param>
    /// <param name="reach">How far from it the edge may be, and what is known of the wall.</param>
    /// <param name="direction">+1: the face is inside the curve (a slice); −1: the face is outside (an opening).</param>
    public static ClosedCurve Trace(ProfileSampler sampler, IReadOnlyList<TargetPoint> rough, TraceReach reach, int direction) =>
        TraceWithRival(sampler, rough, reach, direction, wantsRival: false).Face;

    /// <summary>Traces the face's edge as <see cref="Trace"/> does, and once more as if nothing were known of the wall: the first clear edge
    /// that leaves the face. Where the two part, the photo can be read in two ways.</summary>
    /// <param name="sampler">Reads the photo in the plane of the face.</param>
    /// <param name="rough">The rough outline in the plane of the face.</param>
    /// <param name="reach">How far from it the edge may be, and what is known of the wall.</param>
    /// <param name="direction">+1 or −1 as for <see cref="Trace"/>.</param>
    /// <param name="wantsRival">False leaves the rival away.</param>
    /// <returns>The face's edge; and its rival, null when it was not asked for or no wall can show.</returns>
    public static (ClosedCurve Face, ClosedCurve? Rival) TraceWithRival(
        ProfileSampler sampler, IReadOnlyList<TargetPoint> rough, TraceReach reach, int direction, bool wantsRival)
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
        var firstEdge = wantsRival && strips.Max() >= LeastStripMm ? new float[places * offsets] : [];
        var play = FootWeights(reach.FlareUncertaintyMm);
        var found = new FoundEdges(new float[band.Offsets], new float[band.Offsets], new float[band.Offsets]);
        for (var i = 0; i < places; i++)
        {
            band.FindEdges(i, found.Leaving, found.Any, found.Lit);
            FillCosts(found, strips[i], reach.FlareUncertaintyMm, play, costs.AsSpan(i * offsets, offsets));
            if (firstEdge.Length > 0)
            {
                FillCosts(found, 0, reach.FlareUncertaintyMm, play, firstEdge.AsSpan(i * offsets, offsets));
            }
        }

        return (Follow(costs), firstEdge.Length > 0 ? Follow(firstEdge) : null);

        ClosedCurve Follow(float[] byCost)
        {
            var penalty = (float)(reach.SlopePenalty * StepAcrossMm / StepAlongMm);
            var path = FacePath.Cheapest(byCost, places, offsets, penalty, 12);
            var moved = curve.Moved(Array.ConvertAll(path, k => direction * ((k * StepAcrossMm) - inward)));
            return ClosedCurve.Through(moved, StepAlongMm, 0.25);
        }
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
    private static void FillCosts(FoundEdges found, double stripMm, double flareUncertaintyMm, float[] play, Span<float> costs)
    {
        var passed = 0f;
        var strip = (int)Math.Round(stripMm / StepAcrossMm);
        var footCounts = stripMm >= LeastStripMm;
        var sure = (float)Math.Clamp((stripMm - LeastStripMm - flareUncertaintyMm) / (2 * flareUncertaintyMm), 0, 1);
        for (var k = 0; k < costs.Length; k++)
        {
            // The face ends at the first clear edge: what lies behind one pays.
            passed = k > 2 * ClearSteps ? Math.Max(passed, found.Leaving[k - (2 * ClearSteps) - 1]) : 0;
            costs[k] = footCounts
                ? 1 - WithWall(found, k, strip, sure, play) + (PassedEdgeCost * passed / 2)
                : 1 - found.Leaving[k] + (PassedEdgeCost * passed);
        }
    }

    /// <summary>The evidence for an offset where a strip of wall must show: the face is left there, all the better when the wall's foot
    /// follows; or only the foot shows, a wall lit like the face having hidden its edge. A lit wall casts no shadow on its own side, so
    /// such a foot borders on lit paper; and where the face seems to end in lit paper the wall is missing.</summary>
    private static float WithWall(FoundEdges found, int k, int strip, float sure, float[] play)
    {
        var (foot, between) = (0f, 0f);
        var seen = Math.Min(1, found.Leaving[k] / ClearlyLeft);
        var middle = k + strip;
        var first = Math.Max(k + ClearSteps, middle - play.Length + 1);
        var last = Math.Min(found.Any.Length - 1, middle + play.Length - 1);
        for (var at = k + (2 * ClearSteps); at <= last; at++)
        {
            if (at >= k + (4 * ClearSteps))
            {
                // An edge that leaves the face on the way to the foot is the face's own.
                between = Math.Max(between, found.Leaving[at - (2 * ClearSteps)]);
            }

            if (at >= first)
            {
                var alone = FootAlone * (ShadedFoot + ((1 - ShadedFoot) * found.Lit[at])) * (1 - between);
                foot = Math.Max(foot, found.Any[at] * play[Math.Abs(at - middle)] * Math.Max(seen, alone));
            }
        }

        return ((found.Leaving[k] * (1 - (sure * (MissingWall + (MissingLitWall * found.Lit[k])) * (1 - foot)))) + foot) / 2;
    }

    /// <summary>What a profile shows, offset by offset.</summary>
    private readonly record struct FoundEdges(float[] Leaving, float[] Any, float[] Lit);
}
