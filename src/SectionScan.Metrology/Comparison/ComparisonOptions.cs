namespace SectionScan.Metrology.Comparison;

/// <summary>How two outlines are compared.</summary>
/// <param name="Alignment">How the measured outline is laid on the reference.</param>
/// <param name="IsMirrored">Exchange left and right of the measured outline first: left port against right port.</param>
/// <param name="SpacingMm">The spacing of the places on the reference at which the deviation is taken, mm.</param>
public sealed record ComparisonOptions(
    AlignmentMethod Alignment = AlignmentMethod.BestFit, bool IsMirrored = false, double SpacingMm = 0.25);
