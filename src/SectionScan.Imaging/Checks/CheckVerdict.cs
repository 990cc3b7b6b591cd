namespace SectionScan.Imaging.Checks;

/// <summary>How a photo stands in one respect.</summary>
public enum CheckVerdict
{
    /// <summary>Nothing to be done.</summary>
    Good,

    /// <summary>It can be measured, but less well than it could be: a warning.</summary>
    Fair,

    /// <summary>It cannot be measured: a refusal.</summary>
    Poor,
}
