using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Profiles;

/// <summary>How far one line lies from another at one place.</summary>
/// <param name="LengthMm">The length along the reference to here, mm.</param>
/// <param name="Place">The place on the reference, mm.</param>
/// <param name="DeviationMm">The signed distance, mm.</param>
public sealed record ProfileSample(double LengthMm, SectionPoint Place, double DeviationMm);
