namespace SectionScan.Testing.Rendering;

/// <summary>Which printed scale target lies in a scene.</summary>
public enum SceneTarget
{
    /// <summary>The sheet: ChArUco 13 × 9 on an A4 page on a table, with a window for slices.</summary>
    Sheet,

    /// <summary>The card: ChArUco 8 × 5 on the face of a sawn casting.</summary>
    Card,
}
