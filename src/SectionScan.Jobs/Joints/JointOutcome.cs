using SectionScan.Imaging.Digitising;
using SectionScan.Porting.Joints;

namespace SectionScan.Jobs.Joints;

/// <summary>A matched joint and the files written of it.</summary>
/// <param name="Match">The match.</param>
/// <param name="Files">Full paths of the files written.</param>
/// <param name="Photos">The photos that faces were measured on.</param>
public sealed record JointOutcome(JointMatch Match, IReadOnlyList<string> Files, IReadOnlyList<DigitisedPhoto> Photos);
