using SectionScan.Metrology.Comparison;

namespace SectionScan.Porting.Joints;

/// <summary>A stretch of the joint with a step of one sign.</summary>
/// <param name="Side">The part whose edge stands inside the other's opening: the one to cut for a flush joint.</param>
/// <param name="IsFacingFlow">True when that edge faces the flow and so must be cut; false when the gas passes it from a small opening
/// into a larger one, which may stay.</param>
/// <param name="From">Where it begins, counter-clockwise as seen with the flow.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Deepest">Where the step is largest; its deviation is the signed step, mm.</param>
/// <param name="LengthMm">Its length along the port's edge, mm.</param>
/// <param name="MeanStepMm">The mean signed step, mm.</param>
public sealed record JointStretch(
    JointSide Side, bool IsFacingFlow, DeviationSample From, DeviationSample To, DeviationSample Deepest, double LengthMm, double MeanStepMm);
