using SectionScan.Metrology.Cameras;
using SectionScan.Testing.Rendering;

namespace SectionScan.Testing.Accuracy;

/// <summary>Lens profiles for rendered scenes, each of which has a lens of its own.</summary>
public static class SceneLens
{
    // What ten photos of the sheet leave open at 12 megapixels, as shares of the width and as bare coefficients.
    private static readonly double[] Deviations = [0.0002, 0.0002, 0.0002, 0.0002, 0.001, 0.004, 0.00002, 0.00002, 0.005];

    /// <summary>A profile that holds the true lens.</summary>
    public static LensProfile ProfileOf(PhotoScene scene)
    {
        ArgumentNullException.ThrowIfNull(scene);
        var covariance = Deviations.Select((_, i) => (IReadOnlyList<double>)[.. Deviations.Select((d, j) => i == j ? Squared(i < 4 ? d * scene.WidthPx : d) : 0)]);
        return new(
            scene.Label.Model, scene.WidthPx, scene.HeightPx, scene.Label.FocalLength35Mm, null, scene.SensorCamera.Lens,
            [.. covariance], 0.1, [], 1);
    }

    /// <summary>A profile that is off from the true lens as its own statement of uncertainty allows (one seeded draw of it).</summary>
    public static LensProfile DrawnProfileOf(PhotoScene scene, Random random)
    {
        var exact = ProfileOf(scene);
        var prior = exact.PriorFor(scene.WidthPx, scene.HeightPx, scene.Name).ValueOrThrow();
        var z = new double[LensPrior.ParameterCount];
        MathNet.Numerics.Distributions.Normal.Samples(random, z, 0, 1);
        return exact with { Lens = prior.At(z) };
    }

    private static double Squared(double x) => x * x;
}
