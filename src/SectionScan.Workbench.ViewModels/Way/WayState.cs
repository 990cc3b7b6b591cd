namespace SectionScan.Workbench.ViewModels.Way;

/// <summary>How a place on the way stands.</summary>
public enum WayState
{
    /// <summary>Nothing is missing there.</summary>
    Done,

    /// <summary>The first place where something is missing.</summary>
    Next,

    /// <summary>Later.</summary>
    ToCome,
}
