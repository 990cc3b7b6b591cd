using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Edges;

/// <summary>From the evidence place by place to doubtful stretches.</summary>
internal static class EdgeDoubts
{
    private const float FaintEvidence = 0.3f;
    private const float FaintShare = 0.45f;
    private const float FootEvidence = 0.3f;
    private const double LeastStripMm = 0.3;
    private const double LeastStripPx = 2;
    private const double NarrowFromPx = 0.3;
    private const double NarrowToPx = 7;

    // Where face and wall melt, the edge read wanders within this share of the strip, up to so many pixels of it.
    private const double NarrowShare = 0.4;
    private const double NarrowMostPx = 2.5;

    // The fair course through the rest foretells a faint edge to about this.
    private const double CourseMm = 0.15;

    // A course that misses most of the sound edge by more foretells nothing: the shape is no port section but, say, a half cut lengthwise.
    private const double CourseMissesMm = 0.6;
    // A reading less sure than this was held to the trace, or light and tint contradict each other.
    private const double UnsteadyPx = 0.5;

    // A port's wall has no bumps of this height and a few millimetres' length; the rim of a soft shadow makes them.
    private const double BumpMm = 0.06;
    private const double BumpPx = 0.5;

    // Two readings of the photo farther apart than this are two edges; the wrong one is taken in a quarter of the cases (assumption).
    private const double RivalMm = 0.25;
    private const double RivalPx = 3;
    private const double RivalShare = 0.5;

    // Where the face's colour goes on, its edge may lie at the far end of it.
    private const double BeyondShare = 0.5;
    private const double GapMm = 1.2;
    private const double ShortestMm = 0.9;

    /// <summary>Finds the stretches.</summary>
    /// <param name="sampler">Reads the photo.</param>
    /// <param name="curve">The measured edge.</param>
    /// <param name="flare">How the wall leans.</param>
    /// <param name="flareUncertaintyMm">How well that is known.</param>
    /// <param name="direction">+1 for a slice, −1 for an opening.</param>
    /// <param name="readOn">The curve that the last readings were made on.</param>
    /// <param name="readings">The last readings.</param>
    /// <param name="rival">Another reading of the photo, traced as if nothing were known of the wall; or null.</param>
    public static IReadOnlyList<EdgeDoubt> Of(
        ProfileSampler sampler, ClosedCurve curve, WallFlare flare, double flareUncertaintyMm, int direction, ClosedCurve readOn,
        EdgeReading[] readings, ClosedCurve? rival)
    {
        var (even, places) = EdgeEvidence.Along(sampler, curve, flare, flareUncertaintyMm, direction);
        var course = new Lazy<IReadOnlyList<TargetPoint>?>(() => FairCourse.Through(even.Points, [.. places.Select(p => (double)p.Own * p.Own)]));
        var pixelMm = sampler.MillimetresPerPixel(even.Points[0]);
        var doubts = new List<EdgeDoubt>();

        // Blur makes every edge look fainter: what counts is an edge much fainter than the outline's usual one.
        var faint = Math.Min(FaintEvidence, FaintShare * places.Select(p => p.Own).Order().ElementAt(places.Length / 2));
        bool IsSound(int i) => places[i].Own >= faint;
        var fair = new Lazy<IReadOnlyList<TargetPoint>?>(() => Guiding(course.Value, even, IsSound));
        doubts.AddRange(Stretches(even, EdgeDoubtCause.Faint, i => IsSound(i)
            ? 0 : CourseMm + (fair.Value is { } guide ? DistanceTo(guide, even.Points[i]) : EdgeBridge.DistanceMm(even, i, IsSound))));
        if (direction > 0)
        {
            var beyond = FaceBeyond.ReachMm(sampler, even);
            doubts.AddRange(Stretches(even, EdgeDoubtCause.Faint, i => beyond[i] * BeyondShare));
        }

        doubts.AddRange(Stretches(readOn, EdgeDoubtCause.Unsteady, i =>
            readings[i].StandardUncertaintyMm > UnsteadyPx * pixelMm ? readings[i].StandardUncertaintyMm : 0));
        doubts.AddRange(Stretches(even, EdgeDoubtCause.Unsteady, i =>
        {
            var bump = Math.Abs(LocalCourse.DeviationMm(even, i));
            return bump > Math.Max(BumpMm, BumpPx * pixelMm) ? bump : 0;
        }));
        doubts.AddRange(Stretches(even, EdgeDoubtCause.WallLikeFace, i =>
            places[i].StripMm > Math.Max(LeastStripMm, LeastStripPx * pixelMm) && places[i].Foot < FootEvidence
                ? places[i].StripMm / Math.Sqrt(3) : 0));
        doubts.AddRange(Stretches(even, EdgeDoubtCause.WallLikeFace, i =>
            rival?.NearestTo(even.Points[i]).DistanceTo(even.Points[i]) is { } apart && apart > Math.Max(RivalMm, RivalPx * pixelMm) ? RivalShare * apart : 0));
        doubts.AddRange(Stretches(even, EdgeDoubtCause.NarrowWall, i =>
            places[i].StripMm > NarrowFromPx * pixelMm && places[i].StripMm < NarrowToPx * pixelMm
                ? NarrowShare * Math.Min(places[i].StripMm, NarrowMostPx * pixelMm) : 0));
        return doubts;
    }

    /// <summary>Runs of doubtful places, joined over short gaps; lone ones are left out.</summary>
    private static IEnumerable<EdgeDoubt> Stretches(ClosedCurve curve, EdgeDoubtCause cause, Func<int, double> uncertaintyMm)
    {
        var n = curve.Points.Length;
        var doubtful = Enumerable.Range(0, n).Select(uncertaintyMm).ToArray();
        var gap = Math.Min((int)Math.Round(GapMm / curve.StepMm), n - 1);
        var start = Enumerable.Range(0, n).FirstOrDefault(i => Enumerable.Range(1, gap).All(k => doubtful[(i + n - k) % n] == 0), 0);
        var (first, last) = (-1, -1);
        for (var t = 0; t < n + gap + 1; t++)
        {
            var isDoubtful = t < n && doubtful[(start + t) % n] > 0;
            if (isDoubtful)
            {
                (first, last) = (first < 0 ? t : first, t);
            }
            else if (first >= 0 && t - last > gap)
            {
                var length = (last - first + 1) * curve.StepMm;
                if (length >= ShortestMm)
                {
                    yield return Stretch(first, last, length);
                }

                first = -1;
            }
        }

        EdgeDoubt Stretch(int from, int to, double lengthMm)
        {
            var (a, b) = (curve.Points[(start + from) % n], curve.Points[(start + to) % n]);
            var middle = curve.Points[(start + ((from + to) / 2)) % n];
            double[] inside = [.. Enumerable.Range(from, to - from + 1).Select(t => doubtful[(start + t) % n]).Where(u => u > 0).Order()];
            return new(cause, middle, Math.Max(middle.DistanceTo(a), middle.DistanceTo(b)) + curve.StepMm, lengthMm, inside[(int)(0.8 * (inside.Length - 1))]);
        }
    }

    /// <summary>The course where it keeps to the sound edge, else null.</summary>
    private static IReadOnlyList<TargetPoint>? Guiding(IReadOnlyList<TargetPoint>? course, ClosedCurve curve, Func<int, bool> isSound)
    {
        double[] misses = course is null ? [] : [.. Enumerable.Range(0, curve.Points.Length).Where(isSound).Select(i => DistanceTo(course, curve.Points[i])).Order()];
        return misses.Length > 0 && misses[misses.Length / 2] <= CourseMissesMm ? course : null;
    }

    private static double DistanceTo(IReadOnlyList<TargetPoint> course, TargetPoint point)
    {
        var least = double.MaxValue;
        for (var i = 0; i < course.Count; i++)
        {
            var (a, b) = (course[i], course[(i + 1) % course.Count]);
            var (dx, dy) = (b.XMm - a.XMm, b.YMm - a.YMm);
            var share = Math.Clamp((((point.XMm - a.XMm) * dx) + ((point.YMm - a.YMm) * dy)) / Math.Max((dx * dx) + (dy * dy), 1e-12), 0, 1);
            least = Math.Min(least, point.DistanceTo(new(a.XMm + (share * dx), a.YMm + (share * dy))));
        }

        return least;
    }
}
