using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Comparison;

/// <summary>An outline laid on a reference.</summary>
/// <param name="Outline">The outline where it came to lie, in the reference's frame.</param>
/// <param name="Transform">How it came there.</param>
public sealed record AlignedOutline(Outline Outline, SimilarityTransform Transform)
{
    /// <summary>The even offset that was fitted along with the place, outward positive, mm; zero when none was. The outline is not moved
    /// by it.</summary>
    public double EvenOffsetMm { get; init; }
}
