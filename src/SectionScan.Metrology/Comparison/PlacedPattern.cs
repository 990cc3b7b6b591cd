using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Comparison;

/// <summary>Where a pattern came to lie.</summary>
/// <param name="Transform">From the pattern's own frame to the frame of the fixed outlines.</param>
/// <param name="Middle">The pattern's middle where it came to lie, mm.</param>
/// <param name="ShiftXMm">How far the middle moved from the start along x, mm.</param>
/// <param name="ShiftYMm">How far the middle moved from the start along y, mm.</param>
/// <param name="Turn">The turn from the start, counter-clockwise.</param>
/// <param name="RmsMm">The root mean square distance of the moved outlines from the fixed ones, mm.</param>
/// <param name="IsAtLimit">True when a limit kept the pattern from lying better.</param>
public sealed record PlacedPattern(
    SimilarityTransform Transform, SectionPoint Middle, double ShiftXMm, double ShiftYMm, Angle Turn, double RmsMm, bool IsAtLimit);
