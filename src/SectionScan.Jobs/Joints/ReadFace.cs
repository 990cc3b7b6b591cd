using SectionScan.Imaging.Digitising;
using SectionScan.Metrology.Frames;
using SectionScan.Porting.Joints;

namespace SectionScan.Jobs.Joints;

/// <summary>A face as it was read.</summary>
/// <param name="Face">The face with its openings.</param>
/// <param name="Pivot">A place that stays, in the face's frame; null without.</param>
/// <param name="Photos">The photos it was measured on; none when it came from documents.</param>
public sealed record ReadFace(JointFace Face, SectionPoint? Pivot, IReadOnlyList<DigitisedPhoto> Photos);
