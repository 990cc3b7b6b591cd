using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Porting.Joints;

/// <summary>A gasket's opening at one opening of the joint after the cut.</summary>
/// <param name="Outline">The gasket's opening where it comes to lie, mm, joint frame.</param>
/// <param name="Samples">Round the joint's opening after the cut: + where the gasket's edge lies outside it (a pocket as deep as the gasket
/// is thick), − where the gasket stands in the flow, mm.</param>
/// <param name="LimitMm">A deviation within this cannot be told from none, mm.</param>
public sealed record GasketMatch(Outline Outline, IReadOnlyList<DeviationSample> Samples, double LimitMm)
{
    /// <summary>Where the gasket stands farthest in the flow; null when it does not.</summary>
    public DeviationSample? DeepestInFlow => Samples.MinBy(sample => sample.DeviationMm) is { } least && least.DeviationMm < -LimitMm ? least : null;

    /// <summary>Where the gasket's edge lies farthest outside; null when it does not.</summary>
    public DeviationSample? WidestPocket => Samples.MaxBy(sample => sample.DeviationMm) is { } most && most.DeviationMm > LimitMm ? most : null;
}
