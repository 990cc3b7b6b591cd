using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Judgements;

namespace SectionScan.Porting.Joints;

/// <summary>A matched joint. Its frame is the port face's, seen with the flow.</summary>
/// <param name="Order">What was asked.</param>
/// <param name="Placement">Where the manifold came to lie; shift and turn are counted from the start: studs in the middle of their holes
/// where they are told, else the middles of the openings on each other (one opening: not turned).</param>
/// <param name="PlacementUncertainty">How well that place is known from the outlines' errors; null when those are not known.</param>
/// <param name="Openings">The openings from left to right.</param>
/// <param name="PortStuds">The port's studs, mm.</param>
/// <param name="ManifoldStuds">The manifold's holes where they come to lie, mm.</param>
/// <param name="Warnings">What the person should know, in plain sentences.</param>
public sealed record JointMatch(
    JointOrder Order,
    PlacedPattern Placement,
    PlacementUncertainty? PlacementUncertainty,
    IReadOnlyList<OpeningMatch> Openings,
    IReadOnlyList<SectionPoint> PortStuds,
    IReadOnlyList<SectionPoint> ManifoldStuds,
    IReadOnlyList<Wording> Warnings)
{
    /// <summary>The part behind the joint, whose edges can face the flow: the only one that need be cut.</summary>
    public JointSide Downstream => Order.Flow == JointFlow.Intake ? JointSide.Port : JointSide.Manifold;

    /// <summary>What shift and turn are counted from, in words.</summary>
    public string Start =>
        Order.Freedom.ClearanceMm is not null ? "from where the studs stand in the middle of their holes"
        : Order.Freedom.Pivot is not null ? "from where the middles of the openings come nearest with the pivot in place"
        : Openings.Count > 1 ? "from where the middles of the openings lie on each other as nearly as they can"
        : "from where the middles of the two openings lie on each other";

    /// <summary>True when some edge faces the flow.</summary>
    public bool IsCutNeeded => Openings.Any(opening => opening.Stretches.Any(stretch => stretch.IsFacingFlow));

    /// <summary>What to mind before cutting (common practice, no source).</summary>
    public const string Caution =
        "Before you cut: gauge the wall behind the edge, leave the gasket its sealing width, wear eye, ear and breathing protection, "
        + "extract the dust, and pressure-test afterwards. A qualified person decides; local codes may forbid the change.";
}
