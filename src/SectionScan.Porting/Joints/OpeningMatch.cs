using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Porting.Joints;

/// <summary>One opening of a matched joint, in the joint's frame: the port face's, seen with the flow.</summary>
/// <param name="Port">The port's opening.</param>
/// <param name="Manifold">The manifold's opening where it comes to lie.</param>
/// <param name="Steps">The signed step at even places round the port's opening: + where the manifold's opening is wider, − where it is
/// narrower, mm.</param>
/// <param name="StepStandardUncertaintyMm">u of a step: both walls' u added in squares; NaN when an outline's error is not known.</param>
/// <param name="LimitMm">A step within this is left alone, mm: the larger of U and the step allowed.</param>
/// <param name="Stretches">Where there are steps beyond the limit, counter-clockwise.</param>
/// <param name="CutTo">The edge to which the downstream part is cut so that nothing faces the flow, mm.</param>
/// <param name="PortAreaMm2">The port's area, mm².</param>
/// <param name="ManifoldAreaMm2">The manifold's area, mm².</param>
/// <param name="CutToAreaMm2">The downstream part's area after the cut, mm².</param>
/// <param name="RemovedMm2">How much area the cut takes from the downstream part, mm².</param>
/// <param name="Gasket">The gasket there, or null.</param>
public sealed record OpeningMatch(
    JointOpening Port,
    JointOpening Manifold,
    IReadOnlyList<DeviationSample> Steps,
    double StepStandardUncertaintyMm,
    double LimitMm,
    IReadOnlyList<JointStretch> Stretches,
    Outline CutTo,
    Estimate PortAreaMm2,
    Estimate ManifoldAreaMm2,
    Estimate CutToAreaMm2,
    Estimate RemovedMm2,
    GasketMatch? Gasket)
{
    /// <summary>The widest step: where the manifold's opening is most the wider one.</summary>
    public DeviationSample Highest => Steps.MaxBy(sample => sample.DeviationMm)!;

    /// <summary>The narrowest step.</summary>
    public DeviationSample Lowest => Steps.MinBy(sample => sample.DeviationMm)!;

    /// <summary>The root mean square step, mm.</summary>
    public double RmsStepMm => Math.Sqrt(Steps.Average(sample => sample.DeviationMm * sample.DeviationMm));
}
