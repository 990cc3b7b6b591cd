using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Comparison;

/// <summary>How far the measured wall lies from the reference at one place of the reference.</summary>
/// <param name="Reference">The place on the reference outline, mm.</param>
/// <param name="Measured">The place on the measured outline that it was compared with, mm.</param>
/// <param name="Direction">The direction of the place from the reference's centroid, from x counter-clockwise.</param>
/// <param name="Region">The part of the outline.</param>
/// <param name="DeviationMm">Along the reference's outward normal: positive where the measured wall lies outside the reference (metal
/// is gone already), negative where metal is left, mm.</param>
public sealed record DeviationSample(
    SectionPoint Reference, SectionPoint Measured, Angle Direction, OutlineRegion Region, double DeviationMm);
