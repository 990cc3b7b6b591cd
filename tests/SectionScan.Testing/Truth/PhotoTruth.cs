using System.Text.Json;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;
using SectionScan.Testing.Rendering;

namespace SectionScan.Testing.Truth;

/// <summary>What a rendered photo shows.</summary>
/// <param name="Name">The photo's name.</param>
/// <param name="Target">The target in it.</param>
/// <param name="Camera">The camera for the pixels as displayed.</param>
/// <param name="WidthPx">Displayed width.</param>
/// <param name="HeightPx">Displayed height.</param>
/// <param name="Orientation">EXIF orientation of the file.</param>
/// <param name="PrintRatioX">Printed length over nominal length, across.</param>
/// <param name="PrintRatioY">Printed length over nominal length, up.</param>
/// <param name="Sections">The sections, left to right as laid.</param>
public sealed record PhotoTruth(
    string Name,
    SceneTarget Target,
    Camera Camera,
    int WidthPx,
    int HeightPx,
    int Orientation,
    double PrintRatioX,
    double PrintRatioY,
    IReadOnlyList<SectionTruth> Sections)
{
    /// <summary>Reads a truth file of the sample images.</summary>
    public static PhotoTruth Read(string path)
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(path));
        var root = document.RootElement;
        var (target, image) = (root.GetProperty("target"), root.GetProperty("image"));
        var displayed = root.GetProperty("camera_displayed");
        return new(
            root.GetProperty("photo").GetString()!,
            target.GetProperty("kind").GetString() == "card" ? SceneTarget.Card : SceneTarget.Sheet,
            ReadCamera(displayed),
            displayed.GetProperty("width").GetInt32(),
            displayed.GetProperty("height").GetInt32(),
            image.GetProperty("exif_orientation").GetInt32(),
            target.GetProperty("print_ratio_x").GetDouble(),
            target.GetProperty("print_ratio_y").GetDouble(),
            [.. root.GetProperty("sections").EnumerateArray().Select(ReadSection)]);
    }

    /// <summary>Reads the camera for the stored pixels from a truth file, with the stored size.</summary>
    public static (Camera Camera, int WidthPx, int HeightPx) ReadSensorCamera(string path)
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(path));
        var stored = document.RootElement.GetProperty("camera_stored");
        return (ReadCamera(stored), stored.GetProperty("width").GetInt32(), stored.GetProperty("height").GetInt32());
    }

    private static Camera ReadCamera(JsonElement camera)
    {
        var d = Numbers(camera.GetProperty("dist_k1_k2_p1_p2_k3"));
        var t = Numbers(camera.GetProperty("t_mm"));
        double[] r = [.. camera.GetProperty("R").EnumerateArray().SelectMany(Numbers)];
        return new(
            new(
                camera.GetProperty("fx").GetDouble(), camera.GetProperty("fy").GetDouble(), camera.GetProperty("cx").GetDouble(),
                camera.GetProperty("cy").GetDouble(), d[0], d[1], d[2], d[3], d[4]),
            CameraPlacing.FromMatrix(r, t[0], t[1], t[2]));
    }

    private static SectionTruth ReadSection(JsonElement section)
    {
        var at = Numbers(section.GetProperty("translation_target_mm"));
        SectionPoint[] outline =
        [
            .. section.GetProperty("polygon_section_mm").EnumerateArray().Select(p => new SectionPoint(p[0].GetDouble(), p[1].GetDouble())),
        ];
        var tag = section.GetProperty("tag");
        return new(
            section.GetProperty("name").GetString()!,
            section.GetProperty("station").ValueKind == JsonValueKind.Number ? section.GetProperty("station").GetInt32() : null,
            outline,
            new(new(at[0], at[1]), Clockwise(section)),
            section.GetProperty("hole").GetBoolean(),
            section.GetProperty("thickness_mm").GetDouble(),
            section.GetProperty("wall_draft_tan").GetDouble(),
            tag.ValueKind == JsonValueKind.Object ? Clockwise(tag) : null,
            section.GetProperty("area_mm2").GetDouble(),
            section.GetProperty("perimeter_mm").GetDouble(),
            section.GetProperty("width_mm").GetDouble(),
            section.GetProperty("height_mm").GetDouble());
    }

    // The files turn clockwise as seen on the paper, the product counter-clockwise.
    private static Angle Clockwise(JsonElement thing) => Angle.FromDegrees(-thing.GetProperty("rotation_deg_cw").GetDouble());

    private static double[] Numbers(JsonElement array) => [.. array.EnumerateArray().Select(n => n.GetDouble())];
}
