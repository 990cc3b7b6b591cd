using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Edges;

/// <summary>From a rough outline to the measured edge of a face: trace it, learn how the wall leans, read it below the pixel.</summary>
internal static class FaceOutliner
{
    // A wall leans by about this much: a cut is square within 2 degrees (field practice), moulds taper a little.
    private const double UsualLean = 0.035;
    private const double ReadingStepMm = 0.15;
    private const double CoarseStepMm = 0.3;
    private const double SmoothingHalfWidthMm = 0.9;
    private const int MostTraces = 5;
    private const double SettledMm = 0.35;
    private const double WeakUncertaintyPx = 0.5;
    private const double FairReachMm = 2.5;
    private const double ClearlyBetter = 0.01;
    private const int FairRounds = 3;
    private const float ClearEdge = 0.3f;
    private const double UnclearShare = 0.03;

    /// <summary>Measures the edge.</summary>
    /// <param name="sampler">Reads the photo in the plane of the face.</param>
    /// <param name="rough">The rough outline in the plane of the face.</param>
    /// <param name="direction">+1 for a slice, −1 for an opening.</param>
    public static FaceEdge Measure(ProfileSampler sampler, IReadOnlyList<TargetPoint> rough, int direction)
    {
        var lean = direction < 0 ? 0.05 : (UsualLean * sampler.HeightMm) + 0.05;
        var curve = TraceUntilSettled(sampler, rough, lean, direction);
        curve = BetterOf(sampler, curve, lean, direction);
        var (flare, flareUncertainty) = direction < 0 ? (WallFlare.None, 0) : FlareEstimate.From(sampler, curve, UsualLean * sampler.HeightMm);

        // A second opinion from a much smoother start: a bite or a spur that the trace has settled in does not survive, a corner of the
        // port is found again.
        (curve, var rival) = FaceTracer.TraceWithRival(
            sampler, curve.Points, new(1.6, 1.6, 2.5, 2, flare, Math.Max(0.1, flareUncertainty)), direction, wantsRival: true);
        curve = FaceTracer.Trace(
            sampler, curve.Points, new(0.6, 0.6, 0.25, 8, flare, Math.Max(0.06, flareUncertainty)), direction);

        // Each time from a smoother course than was found: a kink in the curve that is read from would make the true edge look like an
        // outlier. What the smoothing shrinks the reading puts right.
        var traced = curve;
        EdgeReader? known = null;
        foreach (var smoothing in new[] { 1.2, 0.8 })
        {
            (curve, known, _, _, _, _) = Refine(sampler, curve, traced, new(CoarseStepMm, smoothing, flare, flareUncertainty, direction), known);
        }

        var (refined, reader, readOn, readings, scatter, weak) = Refine(
            sampler, curve, traced, new(ReadingStepMm, 0.5, flare, flareUncertainty, direction), known);
        curve = refined;
        var pixel = sampler.MillimetresPerPixel(curve.Points[0]);
        return new(
            curve.Points, scatter, reader.BlurMm, flare, flareUncertainty, weak, pixel,
            EdgeDoubts.Of(sampler, curve, flare, flareUncertainty, direction, readOn, readings, rival));
    }

    /// <summary>The trace, or one that starts from the fair course through most of it, whichever the photo bears out better: a bite or a
    /// spur that the search for objects has left does not survive.</summary>
    private static ClosedCurve BetterOf(ProfileSampler sampler, ClosedCurve traced, double lean, int direction)
    {
        var (best, borne) = Borne(traced);
        for (var round = 0; round < FairRounds; round++)
        {
            if (borne.Count(p => p.Own <= ClearEdge) <= UnclearShare * borne.Length
                || FairCourse.Through(best.Points, [.. borne.Select(p => (double)p.Own * p.Own)]) is not { } course)
            {
                break;
            }

            var (fair, found) = Borne(FaceTracer.Trace(sampler, course, new(FairReachMm, FairReachMm, 0.5, 1.2f, WallFlare.None, lean), direction));
            if (found.Average(p => p.Own) < borne.Average(p => p.Own) + ClearlyBetter)
            {
                break;
            }

            (best, borne) = (fair, found);
        }

        return best;

        (ClosedCurve Curve, PlaceEvidence[] Places) Borne(ClosedCurve curve) => EdgeEvidence.Along(sampler, curve, WallFlare.None, lean, direction);
    }

    private static ClosedCurve TraceUntilSettled(ProfileSampler sampler, IReadOnlyList<TargetPoint> rough, double lean, int direction)
    {
        var curve = ClosedCurve.Through(rough, 0.5, 0.5);
        for (var round = 0; round < MostTraces; round++)
        {
            var strip = direction < 0 ? 0 : Enumerable.Range(0, curve.Points.Length)
                .Max(i => WallStrip.WidthMm(curve.Points[i], curve.SteadyNormals[i], sampler.Camera, sampler.HeightMm));
            var inward = round == 0 ? Math.Max(1.2, strip + 0.6) : 1.2;
            var next = FaceTracer.Trace(sampler, curve.Points, new(inward, 1.2, round == 0 ? 1.5 : 0.5, 1.2f, WallFlare.None, lean), direction);
            var moved = Enumerable.Range(0, next.Points.Length).Max(i => curve.NearestTo(next.Points[i]).DistanceTo(next.Points[i]));
            curve = next;
            if (moved < SettledMm)
            {
                break;
            }
        }

        return curve;
    }

    private static (ClosedCurve Curve, EdgeReader Reader, ClosedCurve ReadOn, EdgeReading[] Readings, double ScatterMm, double WeakShare) Refine(
        ProfileSampler sampler, ClosedCurve course, ClosedCurve traced, Refinement how, EdgeReader? known)
    {
        var curve = ClosedCurve.Through(course.Points, how.StepMm, how.SmoothingMm);
        var reader = new EdgeReader(sampler, curve, how.Flare, how.FlareUncertaintyMm, how.Direction);
        var pixel = sampler.MillimetresPerPixel(curve.Points[0]);
        var read = reader.ReadAll(known);
        var weak = read.Count(r => r.StandardUncertaintyMm > WeakUncertaintyPx * pixel) / (double)read.Length;
        var readings = TraceHold.Hold(read, curve, traced, reader.StripsMm, pixel, reader.BlurMm, how.Direction);
        var (offsets, scatter) = EdgeSmoothing.Smooth(readings, curve.StepMm, SmoothingHalfWidthMm);
        var moved = curve.Moved(Array.ConvertAll(offsets, o => o * how.Direction));
        return (ClosedCurve.Through(moved, how.StepMm, 0), reader, curve, readings, scatter, weak);
    }

    /// <summary>How one round of reading is done.</summary>
    private readonly record struct Refinement(double StepMm, double SmoothingMm, WallFlare Flare, double FlareUncertaintyMm, int Direction);
}
