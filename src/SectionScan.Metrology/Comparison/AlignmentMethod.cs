namespace SectionScan.Metrology.Comparison;

/// <summary>How a measured outline is laid on the reference before the two are compared. A choice of the person: each hides a
/// different part of the difference.</summary>
public enum AlignmentMethod
{
    /// <summary>Not at all: both are in the same frame already.</summary>
    AsPlaced,

    /// <summary>Centroid on centroid, not turned.</summary>
    Centroids,

    /// <summary>Moved, not turned, to the least root mean square distance.</summary>
    BestFit,

    /// <summary>Moved and turned to the least root mean square distance.</summary>
    BestFitWithRotation,
}
