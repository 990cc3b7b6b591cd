using System.Runtime.Intrinsics;
using SectionScan.Imaging.Photos;

namespace SectionScan.Imaging.Edges;

/// <summary>Reads profiles of one quantity (light or tint) square on a curve.</summary>
internal sealed class SignalProfiles(ProfileSampler sampler, ClosedCurve curve, int direction, bool isTint)
{
    private const double StepPx = 0.5;

    // Colours beside an edge are read from this far off inward, in pixels, clear of half-resolution colour's blur.
    private const int SideFarPx = 8;
    private const int SideReadings = 4;

    private readonly (double From, float[]? Profile)[] remembered = new (double, float[]?)[curve.Points.Length];
    private readonly double pixelMm = sampler.MillimetresPerPixel(curve.Points[0]);

    /// <summary>The step of all profiles, mm.</summary>
    public double StepMm => StepPx * pixelMm;

    /// <summary>The mean of the profiles of a place and its neighbours to each side: along the smooth course of the outline the edge is
    /// alike, noise and grain are not.</summary>
    public float[] Mean(int i, double from, double to, int neighbours)
    {
        var own = Remembered(i, from, to);
        if (neighbours == 0)
        {
            return own;
        }

        var mean = (float[])own.Clone();
        var n = curve.Points.Length;
        var total = 1f;
        for (var k = 1; k <= neighbours; k++)
        {
            var weight = 1 - ((float)k / (neighbours + 1));
            foreach (var at in new[] { (i + k) % n, (i - k + n) % n })
            {
                var other = Remembered(at, from, to);
                for (var j = 0; j < mean.Length; j++)
                {
                    mean[j] += weight * other[j];
                }

                total += weight;
            }
        }

        for (var j = 0; j < mean.Length; j++)
        {
            mean[j] /= total;
        }

        return mean;
    }

    /// <summary>The profile of one place, not to be changed: neighbours ask for the same one up to fifteen times.</summary>
    private float[] Remembered(int i, double from, double to)
    {
        if (remembered[i] is { Profile: { } known } last && last.From == from && known.Length == CountOf(from, to))
        {
            return known;
        }

        var profile = At(i, from, to);
        remembered[i] = (from, profile);
        return profile;
    }

    private int CountOf(double from, double to) => Math.Max(8, (int)Math.Round((to - from) / StepMm) + 1);

    /// <summary>The profile of one place.</summary>
    public float[] At(int i, double from, double to)
    {
        var step = StepMm;
        var count = CountOf(from, to);
        var n = curve.Normals[i];
        var outward = (n.X * direction, n.Y * direction);
        var profile = new float[count];
        if (!isTint)
        {
            sampler.ReadLight(curve.Points[i], outward, from, step, profile);
            return profile;
        }

        // Along the line of tints from the face's to the ground's.
        var tints = new float[2 * count];
        sampler.ReadTint(curve.Points[i], outward, from, step, tints);
        var third = count / 3;
        float x = 0, y = 0;
        for (var k = 0; k < third; k++)
        {
            x += tints[2 * (count - 1 - k)] - tints[2 * k];
            y += tints[(2 * (count - 1 - k)) + 1] - tints[(2 * k) + 1];
        }

        var length = MathF.Sqrt((x * x) + (y * y));
        var (ux, uy) = length > 0 ? (x / length, y / length) : (1f, 0f);
        for (var k = 0; k < count; k++)
        {
            profile[k] = (ux * tints[2 * k]) + (uy * tints[(2 * k) + 1]);
        }

        return profile;
    }

    /// <summary>The mixing shift at a place where no wall shows, from the colours on both sides of the edge.</summary>
    public double ShiftInBlurs(int i, double edgeMm)
    {
        var n = curve.Normals[i];
        var outward = (n.X * direction, n.Y * direction);
        Span<float> face = stackalloc float[Vector128<float>.Count];
        Span<float> ground = stackalloc float[Vector128<float>.Count];
        MeanColour(i, outward, edgeMm - (SideFarPx * pixelMm)).CopyTo(face);
        MeanColour(i, outward, edgeMm + ((SideFarPx - SideReadings + 1) * pixelMm)).CopyTo(ground);
        if (!isTint)
        {
            return MixingShift.InBlurs(face, ground, (blue, green, red) => LightOf((0.114f * blue) + (0.587f * green) + (0.299f * red)));
        }

        var (x, y) = ((ground[2] - ground[1]) - (face[2] - face[1]), (ground[0] - ground[1]) - (face[0] - face[1]));
        return MixingShift.InBlurs(face, ground, (blue, green, red) => (x * (red - green)) + (y * (blue - green)));
    }

    private Vector128<float> MeanColour(int i, (double X, double Y) outward, double fromMm)
    {
        Span<Vector128<float>> colours = stackalloc Vector128<float>[SideReadings];
        sampler.ReadColour(curve.Points[i], outward, fromMm, pixelMm, colours);
        var sum = colours[0];
        for (var k = 1; k < SideReadings; k++)
        {
            sum += colours[k];
        }

        return sum / SideReadings;
    }

    private static double LightOf(float stored)
    {
        var level = Math.Clamp(stored, 0f, 1f) * 255f;
        var low = Math.Min((int)level, 254);
        return LinearLight.OfStored[low] + ((level - low) * (LinearLight.OfStored[low + 1] - LinearLight.OfStored[low]));
    }
}
