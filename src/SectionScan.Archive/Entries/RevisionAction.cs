namespace SectionScan.Archive.Entries;

/// <summary>What a revision did.</summary>
public enum RevisionAction
{
    /// <summary>The entry came in.</summary>
    Added,

    /// <summary>Something was corrected.</summary>
    Revised,

    /// <summary>The entry was marked as removed; its history stays.</summary>
    Removed,

    /// <summary>The mark was taken away again.</summary>
    Restored,
}
