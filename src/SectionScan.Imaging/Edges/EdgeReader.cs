namespace SectionScan.Imaging.Edges;

/// <summary>Reads the place of a face's edge below the pixel, all along a traced curve: once in light, once in tint, weighed by how
/// well each shows it. Rubber in its own contact shadow may be as bright as the paper beside it, but never of its tint.</summary>
/// <remarks>Least squares on a blurred-step model in linear light: the erf fit of M. Hagara and P. Kulla, Radioengineering 2011
/// (abstract known), with a third level where a narrow strip of wall shows between face and ground.</remarks>
internal sealed class EdgeReader
{
    private readonly ClosedCurve curve;
    private readonly EdgeSignal light;
    private readonly EdgeSignal tint;

    /// <summary>Prepares to read.</summary>
    /// <param name="sampler">Reads the photo in the plane of the face.</param>
    /// <param name="curve">The traced edge, right to about a pixel.</param>
    /// <param name="flare">How the wall leans.</param>
    /// <param name="flareUncertaintyMm">How well that is known.</param>
    /// <param name="direction">+1 for a slice, −1 for an opening.</param>
    public EdgeReader(ProfileSampler sampler, ClosedCurve curve, WallFlare flare, double flareUncertaintyMm, int direction)
    {
        this.curve = curve;
        var strips = new double[curve.Points.Length];
        for (var i = 0; i < strips.Length; i++)
        {
            strips[i] = direction < 0 ? 0 : Math.Max(0, WallStrip.WidthMm(
                curve.Points[i], curve.Normals[i], sampler.Camera, sampler.HeightMm, flare.AtMm(curve.Normals[i])));
        }

        light = new(sampler, curve, strips, flareUncertaintyMm, direction, isTint: false);
        tint = new(sampler, curve, strips, flareUncertaintyMm, direction, isTint: true);
    }

    /// <summary>Standard deviation of the blur at the edges in light, mm.</summary>
    public double BlurMm => light.BlurMm;

    /// <summary>Reads every place of the curve.</summary>
    public EdgeReading[] ReadAll()
    {
        light.Prepare();
        tint.Prepare();
        var readings = new EdgeReading[curve.Points.Length];
        for (var i = 0; i < readings.Length; i++)
        {
            readings[i] = light.Read(i).With(tint.Read(i));
        }

        return readings;
    }
}
