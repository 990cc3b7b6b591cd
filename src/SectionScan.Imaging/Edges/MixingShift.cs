using SectionScan.Imaging.Photos;

namespace SectionScan.Imaging.Edges;

/// <summary>How far a signal that is no straight measure of light misplaces an edge. At a blurred edge the light of face and ground is
/// mixed; a tint or a luma of stored values does not follow the mixture in proportion, so its step seems to lie to one side.</summary>
internal static class MixingShift
{
    private const double Reach = 3.2;
    private const double Step = 0.2;
    private const double Largest = 1;
    private const int LightSteps = 8192;

    // How much of the mixture is ground, at even places across the edge.
    private static readonly double[] Shares =
        [.. Enumerable.Range(0, (int)Math.Round(2 * Reach / Step) + 1).Select(k => (double)BlurredStep.At((k * Step) - Reach))];

    private static readonly float[] StoredOfLight = [.. Enumerable.Range(0, LightSteps + 2).Select(k => StoredExactly((double)k / LightSteps))];

    /// <summary>The apparent place of the edge less its true place, in standard deviations of the optical blur, from face toward
    /// ground; equal areas before and after the edge define the apparent place, which later linear smoothing does not move.</summary>
    /// <param name="face">Stored blue, green, red of the face, 0 to 1.</param>
    /// <param name="ground">The same of the ground.</param>
    /// <param name="signal">The signal of a stored colour.</param>
    public static double InBlurs(ReadOnlySpan<float> face, ReadOnlySpan<float> ground, Func<float, float, float, double> signal)
    {
        Span<double> near = stackalloc double[3];
        Span<double> far = stackalloc double[3];
        for (var c = 0; c < 3; c++)
        {
            near[c] = Light(face[c]);
            far[c] = Light(ground[c]);
        }

        var atFace = signal(face[0], face[1], face[2]);
        var atGround = signal(ground[0], ground[1], ground[2]);
        double area = 0;
        for (var k = 0; k < Shares.Length; k++)
        {
            var share = Shares[k];
            var mixed = signal(Stored(Mix(near[0], far[0], share)), Stored(Mix(near[1], far[1], share)), Stored(Mix(near[2], far[2], share)));
            area += (mixed - (k < Shares.Length / 2 ? atFace : k > Shares.Length / 2 ? atGround : (atFace + atGround) / 2)) * Step;
        }

        var step = atFace - atGround;
        return Math.Abs(step) < 1e-4 ? 0 : Math.Clamp(area / step, -Largest, Largest);
    }

    private static double Mix(double a, double b, double share) => a + (share * (b - a));

    private static double Light(float stored)
    {
        var level = Math.Clamp(stored, 0f, 1f) * 255f;
        var low = Math.Min((int)level, 254);
        return LinearLight.OfStored[low] + ((level - low) * (LinearLight.OfStored[low + 1] - LinearLight.OfStored[low]));
    }

    /// <summary>The stored value of a light, between the steps of a table: good to 1e-5.</summary>
    private static float Stored(double light)
    {
        var place = Math.Clamp(light, 0, 1) * LightSteps;
        var low = (int)place;
        return StoredOfLight[low] + ((float)(place - low) * (StoredOfLight[low + 1] - StoredOfLight[low]));
    }

    /// <summary>IEC 61966-2-1 (sRGB), the transfer function (cited from memory).</summary>
    private static float StoredExactly(double light) =>
        (float)(light <= 0.0031308 ? 12.92 * light : (1.055 * Math.Pow(light, 1 / 2.4)) - 0.055);
}
