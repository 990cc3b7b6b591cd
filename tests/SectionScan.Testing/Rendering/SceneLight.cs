namespace SectionScan.Testing.Rendering;

/// <summary>The light in a scene.</summary>
/// <param name="Ambient">The light of an even sky on a level surface.</param>
/// <param name="Lamps">The lamps.</param>
public sealed record SceneLight(LinearColour Ambient, IReadOnlyList<SceneLamp> Lamps)
{
    /// <summary>How strongly paper and face mirror a lamp (a glare patch); 0 is none.</summary>
    public double Glare { get; init; }

    /// <summary>An even sky and a wide lamp: the light of a good photo.</summary>
    public static SceneLight Soft { get; } = new(
        new(0.62f, 0.63f, 0.64f), [new(-60, -160, 620, 130, new(0.40f, 0.39f, 0.38f))]);

    /// <summary>One small lamp and little sky.</summary>
    public static SceneLight Hard { get; } = new(
        new(0.30f, 0.30f, 0.31f), [new(480, -110, 420, 4, new(0.95f, 0.90f, 0.80f))]);
}
