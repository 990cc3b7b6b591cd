using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Comparisons;

/// <summary>The signed deviation at one place of the reference outline.</summary>
/// <param name="Place">The place on the reference outline, mm, section frame.</param>
/// <param name="NormalX">x of the outward unit normal there.</param>
/// <param name="NormalY">y of the outward unit normal there.</param>
/// <param name="DeviationMm">How far the measured outline lies along the normal, mm: positive outside the reference.</param>
public sealed record DeviationMark(SectionPoint Place, double NormalX, double NormalY, double DeviationMm);
