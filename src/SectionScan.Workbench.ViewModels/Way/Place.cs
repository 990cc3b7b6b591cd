namespace SectionScan.Workbench.ViewModels.Way;

/// <summary>The places of the way through a job, in order.</summary>
public enum Place
{
    /// <summary>Print the target, check the print, learn the lens.</summary>
    Prepare,

    /// <summary>Take photos in.</summary>
    Capture,

    /// <summary>Turn them into sections.</summary>
    Digitise,

    /// <summary>Lay one section on another.</summary>
    Compare,

    /// <summary>Choose a target shape.</summary>
    Decide,

    /// <summary>Plan the cut and print templates.</summary>
    Cut,

    /// <summary>Prove the finished port.</summary>
    Prove,

    /// <summary>Keep the sections in the library.</summary>
    Archive,
}
