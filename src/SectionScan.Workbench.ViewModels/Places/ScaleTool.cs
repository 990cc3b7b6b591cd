namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>What is told of a photo by picking places on it before it is digitised.</summary>
public enum ScaleTool
{
    /// <summary>Nothing is picked.</summary>
    None,

    /// <summary>Two points of known distance.</summary>
    TwoPoints,

    /// <summary>The four corners of a known rectangle.</summary>
    Rectangle,

    /// <summary>A slice that was missed.</summary>
    MissedSlice,
}
