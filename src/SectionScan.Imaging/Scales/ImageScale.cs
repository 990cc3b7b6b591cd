using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Capture;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Scales;

/// <summary>A photo's camera, wherever it comes from, with what is not known of it: all that measuring needs.</summary>
/// <param name="Camera">From the measured plane to the photo's pixels as stored.</param>
/// <param name="Target">What it was fitted to.</param>
/// <param name="Facts">The camera for reports.</param>
/// <param name="Deviations">Causes of error of the camera.</param>
/// <param name="Stretch">Cause of error of the scale's own length.</param>
/// <param name="Covered">Places where the scale itself lies and nothing is looked for, polygons in mm.</param>
/// <param name="Cautions">What a person should know before trusting it.</param>
internal sealed record ImageScale(
    Camera Camera,
    TargetFit Target,
    CameraFacts Facts,
    IReadOnlyList<ScaleDeviation> Deviations,
    ScaleStretch Stretch,
    IReadOnlyList<TargetPoint[]> Covered,
    IReadOnlyList<string> Cautions)
{
    /// <summary>The scale of a camera that was fitted to many points.</summary>
    public static ImageScale Fitted(CameraFit fit, TargetFit target, ScaleStretch stretch)
    {
        var (corners, lens) = fit.Deviations();
        return new(
            fit.Camera, target, FactsOf(fit.Camera, fit.Source, fit.HeightStandardUncertaintyMm),
            [new("target fit", corners), new("lens and camera height", lens)], stretch, [], []);
    }

    /// <summary>The camera for reports.</summary>
    public static CameraFacts FactsOf(Camera camera, string source, double heightUncertaintyMm) => new(
        source, camera.Lens.FocalXPx, camera.HeightMm, heightUncertaintyMm, camera.Tilt.Degrees, camera.Lens, camera.Pose);
}
