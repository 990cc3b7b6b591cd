using OpenCvSharp;
using SectionScan.Testing.Truth;

namespace SectionScan.Testing.Rendering;

/// <summary>Makes photographs whose truth is known exactly: casts a ray for every pixel, develops, writes a JPEG with EXIF. The same scene
/// gives the same bytes on any number of threads.</summary>
public static class PhotoRenderer
{
    /// <summary>Renders the scene as a photo file.</summary>
    public static RenderedPhoto Render(PhotoScene scene)
    {
        ArgumentNullException.ThrowIfNull(scene);
        using var picture = RenderPicture(scene);
        Cv2.ImEncode(".jpg", picture, out var jpeg, new ImageEncodingParam(ImwriteFlags.JpegQuality, scene.Develop.JpegQuality));
        return new(ExifSegment.InsertedInto(jpeg, scene.Label, scene.Orientation), TruthOf(scene));
    }

    /// <summary>Renders the scene as 8-bit pixels as stored (blue, green, red), without JPEG. The caller disposes it.</summary>
    public static Mat RenderPicture(PhotoScene scene)
    {
        ArgumentNullException.ThrowIfNull(scene);
        using var light = LightOnSensor.Render(scene);
        return PhotoDeveloper.Develop(light, scene.Develop, scene.Seed);
    }

    /// <summary>What the scene shows, without rendering it.</summary>
    public static PhotoTruth TruthOf(PhotoScene scene)
    {
        ArgumentNullException.ThrowIfNull(scene);
        var isTurned = scene.Orientation is 6 or 8;
        return new(
            scene.Name,
            scene.Target,
            CameraPlacing.Displayed(scene.SensorCamera, scene.WidthPx, scene.HeightPx, scene.Orientation),
            isTurned ? scene.HeightPx : scene.WidthPx,
            isTurned ? scene.WidthPx : scene.HeightPx,
            scene.Orientation,
            scene.PrintRatioX,
            scene.PrintRatioY,
            [
                .. scene.Slices.Select(s => SectionTruth.Of(
                    s.Station is { } n ? $"station {n}" : "slice", s.Station, s.Outline, s.Placement, false, s.ThicknessMm, s.DraftTangent,
                    scene.Tags.FirstOrDefault(t => t.Id == s.Station)?.Up)),
                .. scene.Openings.Select((o, k) => SectionTruth.Of(
                    $"opening {k + 1}", null, o.Outline, o.Placement, true, 0, o.DraftTangent, null)),
            ]);
    }
}
