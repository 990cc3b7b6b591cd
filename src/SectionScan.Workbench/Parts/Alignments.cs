using SectionScan.Metrology.Comparison;

namespace SectionScan.Workbench.Parts;

/// <summary>Alignments as a person chooses between them.</summary>
internal static class Alignments
{
    public static readonly (AlignmentMethod Method, string Words)[] All =
    [
        (AlignmentMethod.BestFitWithRotation, "best fit, turned"),
        (AlignmentMethod.BestFit, "best fit, not turned"),
        (AlignmentMethod.Centroids, "centroids together"),
        (AlignmentMethod.AsPlaced, "as placed"),
    ];
}
