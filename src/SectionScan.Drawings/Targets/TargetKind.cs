namespace SectionScan.Drawings.Targets;

/// <summary>What can be printed to give a photo its scale or a section its number.</summary>
public enum TargetKind
{
    /// <summary>The sheet with a white window for slices.</summary>
    Sheet,

    /// <summary>The card laid on a sawn casting.</summary>
    Card,

    /// <summary>Tags to cut out, one a station.</summary>
    StationTags,
}
