using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Joints;

/// <summary>One opening in a face.</summary>
/// <param name="Name">What to call it.</param>
/// <param name="Outline">Its edge, mm, in the face's frame.</param>
/// <param name="ErrorSources">Independent causes of error in the same frame; empty when nothing is known.</param>
public sealed record JointOpening(string Name, Outline Outline, IReadOnlyList<OutlineErrorSource> ErrorSources)
{
    /// <summary>The opening moved with its face.</summary>
    public JointOpening Moved(SimilarityTransform transform)
    {
        ArgumentNullException.ThrowIfNull(transform);
        return this with { Outline = transform.Apply(Outline), ErrorSources = ErrorSources.Moved(transform) };
    }
}
