using SectionScan.Metrology.Cameras;

namespace SectionScan.Testing.Rendering;

/// <summary>Draws the light of the hard cases.</summary>
internal static class Lighting
{
    private static readonly LinearColour Warm = new(1.0f, 0.93f, 0.82f);
    private static readonly LinearColour Cool = new(0.96f, 0.98f, 1.0f);

    /// <summary>A lamp so near on one side that the paper's light falls to a third across the window.</summary>
    public static SceneLight StrongGradient(Random random) =>
        new(Cool * 0.14f, [Around(random, 190, 260, 170, 230, 25, Warm * 0.9f)]);

    /// <summary>A small lamp at 30 to 50 degrees of elevation.</summary>
    public static SceneLight HardShadow(Random random) =>
        new(Cool * PortShapes.Between(random, 0.22, 0.4).AsFloat(), [Around(random, 380, 520, 320, 480, PortShapes.Between(random, 1.5, 6), Warm * 0.8f)]);

    /// <summary>A wide lamp at about 45 degrees.</summary>
    public static SceneLight SoftShadow(Random random) =>
        new(Cool * PortShapes.Between(random, 0.25, 0.4).AsFloat(), [Around(random, 380, 520, 380, 520, PortShapes.Between(random, 40, 120), Cool * 0.75f)]);

    /// <summary>A lamp that shines onto the inner walls of openings.</summary>
    public static SceneLight IntoOpenings(Random random) =>
        new(Cool * 0.35f, [Around(random, 250, 420, 330, 480, PortShapes.Between(random, 2, 60), Warm * 1.0f)]);

    /// <summary>A lamp whose mirror image lies in the window.</summary>
    public static SceneLight Glare(Random random, Camera camera)
    {
        var (x, y) = (PortShapes.Between(random, 70, 190), PortShapes.Between(random, 60, 110));
        var height = PortShapes.Between(random, 350, 600);
        var (dx, dy) = ((x - camera.FootPoint.XMm) / camera.HeightMm, (y - camera.FootPoint.YMm) / camera.HeightMm);
        return new(Cool * 0.45f, [new(x + (dx * height), y + (dy * height), height, 30, Cool * 0.55f)])
        {
            Glare = PortShapes.Between(random, 1.5, 3),
        };
    }

    // A lamp at a random side of the target.
    private static SceneLamp Around(
        Random random, double nearest, double farthest, double lowest, double highest, double radius, LinearColour light)
    {
        var (sin, cos) = Math.SinCos(PortShapes.Between(random, 0, Math.Tau));
        var away = PortShapes.Between(random, nearest, farthest);
        return new(130 + (away * cos), 80 + (away * sin), PortShapes.Between(random, lowest, highest), radius, light);
    }

    private static float AsFloat(this double value) => (float)value;
}
