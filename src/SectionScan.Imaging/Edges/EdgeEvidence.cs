namespace SectionScan.Imaging.Edges;

/// <summary>How well the photo bears a measured edge out, place by place: whether there is an edge at all, and
/// whether the wall that geometry says must show below the face does show.</summary>
internal static class EdgeEvidence
{
    private const double StepAlongMm = 0.3;
    private const double StepAcrossMm = 0.05;
    private const double InwardMm = 0.6;
    private const double OutwardMm = 0.6;
    private const double OwnReachMm = 0.15;
    private const double OwnReachPx = 1.5;

    /// <summary>Looks at every place of a curve.</summary>
    /// <param name="sampler">Reads the photo.</param>
    /// <param name="curve">The measured edge.</param>
    /// <param name="flare">How the wall leans.</param>
    /// <param name="flareUncertaintyMm">How well that is known.</param>
    /// <param name="direction">+1 for a slice, −1 for an opening.</param>
    public static (ClosedCurve Curve, PlaceEvidence[] Places) Along(
        ProfileSampler sampler, ClosedCurve curve, WallFlare flare, double flareUncertaintyMm, int direction)
    {
        var even = ClosedCurve.Through(curve.Points, StepAlongMm, 0);
        var strips = new double[even.Points.Length];
        for (var i = 0; i < strips.Length; i++)
        {
            strips[i] = direction < 0 ? 0 : Math.Max(0, WallStrip.WidthMm(
                even.Points[i], even.SteadyNormals[i], sampler.Camera, sampler.HeightMm, flare.AtMm(even.SteadyNormals[i])));
        }

        var play = Math.Max(0.25, 2.5 * flareUncertaintyMm);
        var beyond = Math.Max(0, strips.Max() + play - OutwardMm) + 0.2;
        using var band = new BandProfiles(sampler, even, InwardMm, OutwardMm, beyond, StepAcrossMm, direction);
        var (leaving, edges, lit) = (new float[band.Offsets], new float[band.Offsets], new float[band.Offsets]);
        var places = new PlaceEvidence[strips.Length];
        var pixelMm = sampler.MillimetresPerPixel(even.Points[0]);
        var own = Math.Max(OwnReachMm, OwnReachPx * pixelMm);
        for (var i = 0; i < places.Length; i++)
        {
            band.FindEdges(i, leaving, edges, lit);
            places[i] = new(
                Most(leaving, -own, own), strips[i],
                Most(edges, Math.Max(own + 0.1, strips[i] - play), strips[i] + play));
        }

        return (even, places);

        int Offset(double mm) => Math.Clamp((int)Math.Round((mm + InwardMm) / StepAcrossMm), 0, band.Offsets - 1);

        float Most(float[] values, double fromMm, double toMm)
        {
            var (from, to) = (Offset(fromMm), Offset(toMm));
            return from > to ? 0 : values.AsSpan(from, to - from + 1).ToArray().Max();
        }
    }
}

/// <summary>What the photo says of one place of an edge; evidence from 0 (none) to 1 (a clear, sharp edge).</summary>
/// <param name="Own">Of the face's colour being left here.</param>
/// <param name="StripMm">Width of wall that must show below the face here, mm; 0 where it is hidden.</param>
/// <param name="Foot">Of an edge where the foot of the wall must be.</param>
internal readonly record struct PlaceEvidence(float Own, double StripMm, float Foot);
