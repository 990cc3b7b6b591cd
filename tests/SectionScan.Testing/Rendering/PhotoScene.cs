using SectionScan.Metrology.Cameras;

namespace SectionScan.Testing.Rendering;

/// <summary>Everything that a rendered photo shows; the same scene gives the same bytes.</summary>
/// <param name="Target">Which target.</param>
/// <param name="SensorCamera">Lens and pose for the pixels as stored in the file (before EXIF orientation).</param>
/// <param name="WidthPx">Stored width.</param>
/// <param name="HeightPx">Stored height.</param>
/// <param name="Seed">Seed of textures and noise.</param>
public sealed record PhotoScene(SceneTarget Target, Camera SensorCamera, int WidthPx, int HeightPx, int Seed)
{
    /// <summary>EXIF orientation: 1, 3, 6 or 8.</summary>
    public int Orientation { get; init; } = 1;

    /// <summary>Printed length over true length, across the sheet.</summary>
    public double PrintRatioX { get; init; } = 1;

    /// <summary>Printed length over true length, up the sheet.</summary>
    public double PrintRatioY { get; init; } = 1;

    /// <summary>The slices on the sheet.</summary>
    public IReadOnlyList<SceneSlice> Slices { get; init; } = [];

    /// <summary>The station tags on the sheet.</summary>
    public IReadOnlyList<SceneTag> Tags { get; init; } = [];

    /// <summary>The openings in the casting (only with the card).</summary>
    public IReadOnlyList<SceneOpening> Openings { get; init; } = [];

    /// <summary>Things that cover parts of the target.</summary>
    public IReadOnlyList<SceneObstacle> Obstacles { get; init; } = [];

    /// <summary>The light.</summary>
    public SceneLight Light { get; init; } = SceneLight.Soft;

    /// <summary>Sensor and file.</summary>
    public DevelopSettings Develop { get; init; } = new();

    /// <summary>What the file says of itself.</summary>
    public PhotoLabel Label { get; init; } = new("Example", "Example phone", 26, "2025:06:14 10:30:00");

    /// <summary>The name of the case, for tables.</summary>
    public string Name { get; init; } = "scene";

    /// <summary>The same picture with both sides <paramref name="factor"/> times as many pixels.</summary>
    public PhotoScene Resized(double factor)
    {
        var lens = SensorCamera.Lens;

        // A pixel's centre is at whole numbers, its corner at -0.5: scale about the corner.
        var scaled = lens with
        {
            FocalXPx = lens.FocalXPx * factor,
            FocalYPx = lens.FocalYPx * factor,
            CentreXPx = ((lens.CentreXPx + 0.5) * factor) - 0.5,
            CentreYPx = ((lens.CentreYPx + 0.5) * factor) - 0.5,
        };
        return this with
        {
            SensorCamera = new(scaled, SensorCamera.Pose),
            WidthPx = (int)Math.Round(WidthPx * factor),
            HeightPx = (int)Math.Round(HeightPx * factor),
        };
    }
}
