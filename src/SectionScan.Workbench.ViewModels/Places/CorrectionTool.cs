namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>The tools for corrections by hand.</summary>
public enum CorrectionTool
{
    /// <summary>No tool: the photo is moved and zoomed.</summary>
    None,

    /// <summary>Draws the outline from one place to another.</summary>
    MovePoint,

    /// <summary>Replaces a stretch by a curve through places.</summary>
    RedrawStretch,

    /// <summary>Leaves out a bubble or a burr.</summary>
    ExcludeBubble,
}
