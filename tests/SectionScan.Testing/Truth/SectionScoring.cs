using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Testing.Truth;

/// <summary>Judges measured outlines by the truth.</summary>
public static class SectionScoring
{
    private const int Steps = 2000;

    /// <summary>Compares a measured outline with the truth.</summary>
    /// <param name="truth">The true section.</param>
    /// <param name="measured">The measured outline, section frame; its up is that of the tag (of the sheet without one), so it is
    /// turned by the tag's known error into the true axes before it is judged.</param>
    /// <param name="placed">The same outline in the target frame, if that is to be judged too.</param>
    public static SectionScore Score(SectionTruth truth, IReadOnlyList<SectionPoint> measured, IReadOnlyList<TargetPoint>? placed = null)
    {
        ArgumentNullException.ThrowIfNull(truth);
        ArgumentNullException.ThrowIfNull(measured);
        var (sin, cos) = Math.SinCos(truth.UpError.Radians);
        SectionPoint[] turned = [.. measured.Select(p => new SectionPoint((p.XMm * cos) - (p.YMm * sin), (p.XMm * sin) + (p.YMm * cos)))];
        var found = SectionTruth.Of("measured", null, turned, truth.Placement, truth.IsOpening, 0, 0, null);

        // On the target y runs down: mirrored, so that outward keeps its meaning.
        SectionPoint[]? placedFound = placed is null ? null : [.. placed.Select(p => new SectionPoint(p.XMm, -p.YMm))];
        SectionPoint[] placedTruth = [.. truth.PlacedOutline.Select(p => new SectionPoint(p.XMm, -p.YMm))];
        return new(
            100 * ((found.AreaMm2 / truth.AreaMm2) - 1),
            100 * ((found.PerimeterMm / truth.PerimeterMm) - 1),
            found.WidthMm - truth.WidthMm,
            found.HeightMm - truth.HeightMm,
            Deviation(Centred(truth.Outline), Centred(turned)),
            placedFound is null ? null : Deviation(placedTruth, placedFound),
            placedFound is null ? null : CentroidOf(placedFound).DistanceTo(CentroidOf(placedTruth)));
    }

    /// <summary>The section of a photo's truth nearest to a measured one on the target, or null when the nearest is more than
    /// <paramref name="withinMm"/> away.</summary>
    public static SectionTruth? Nearest(PhotoTruth photo, IReadOnlyList<TargetPoint> placed, double withinMm = 10)
    {
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(placed);
        var at = CentroidOf([.. placed.Select(p => new SectionPoint(p.XMm, p.YMm))]);
        var near = photo.Sections
            .Select(s => (Section: s, Away: CentroidOf([.. s.PlacedOutline.Select(p => new SectionPoint(p.XMm, p.YMm))]).DistanceTo(at)))
            .OrderBy(s => s.Away).FirstOrDefault();
        return near.Section is not null && near.Away <= withinMm ? near.Section : null;
    }

    /// <summary>The deviation of one closed polygon from another, both in one frame with y up.</summary>
    public static OutlineDeviation Deviation(IReadOnlyList<SectionPoint> truth, IReadOnlyList<SectionPoint> measured)
    {
        var along = Outline.From(truth).ValueOrThrow().Resampled(Steps);
        SectionPoint[] corners = [.. measured];
        var signed = new double[Steps];
        for (var k = 0; k < Steps; k++)
        {
            signed[k] = SignedDistance(corners, along[k]);
        }

        double[] sizes = [.. signed.Select(Math.Abs).Order()];
        return new(
            signed.Average(), sizes[Steps / 2], sizes[(int)(0.95 * Steps)], sizes[^1], sizes.Count(d => d <= 0.05) / (double)Steps);
    }

    // Positive where the true point lies inside the measured polygon, that is where the measured outline lies outside the true one.
    private static double SignedDistance(SectionPoint[] corners, SectionPoint p)
    {
        var (least, isInside) = (double.MaxValue, false);
        var a = corners[^1];
        foreach (var b in corners)
        {
            var (ux, uy) = (b.XMm - a.XMm, b.YMm - a.YMm);
            var (vx, vy) = (p.XMm - a.XMm, p.YMm - a.YMm);
            var length2 = (ux * ux) + (uy * uy);
            var along = length2 > 0 ? Math.Clamp(((ux * vx) + (uy * vy)) / length2, 0, 1) : 0;
            var (dx, dy) = (vx - (along * ux), vy - (along * uy));
            least = Math.Min(least, (dx * dx) + (dy * dy));
            if (a.YMm > p.YMm != b.YMm > p.YMm && p.XMm < a.XMm + (ux * vy / uy))
            {
                isInside = !isInside;
            }

            a = b;
        }

        return isInside ? Math.Sqrt(least) : -Math.Sqrt(least);
    }

    private static SectionPoint CentroidOf(SectionPoint[] polygon) => PolygonMoments.Of(polygon).Centroid;

    private static SectionPoint[] Centred(SectionPoint[] polygon)
    {
        var c = CentroidOf(polygon);
        return Array.ConvertAll(polygon, p => new SectionPoint(p.XMm - c.XMm, p.YMm - c.YMm));
    }
}
