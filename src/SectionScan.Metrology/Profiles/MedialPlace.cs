using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Profiles;

/// <summary>A place of the line midway between two lines.</summary>
/// <param name="DistanceMm">The length along the midway line to here, mm.</param>
/// <param name="Place">The centre of the circle that touches both lines, mm.</param>
/// <param name="HeightMm">That circle's diameter, mm.</param>
public sealed record MedialPlace(double DistanceMm, SectionPoint Place, double HeightMm);
