using SectionScan.Porting.Lengthwise;

namespace SectionScan.Jobs.Lengthwise;

/// <summary>A lengthwise shape, compared or not, and the files written.</summary>
/// <param name="Shape">The shape.</param>
/// <param name="Comparison">Against the reference, or null.</param>
/// <param name="Warnings">What the person should know of the photos.</param>
/// <param name="Files">Full paths of the files written.</param>
public sealed record LengthwiseOutcome(
    LengthwiseShape Shape, LengthwiseComparison? Comparison, IReadOnlyList<string> Warnings, IReadOnlyList<string> Files);
