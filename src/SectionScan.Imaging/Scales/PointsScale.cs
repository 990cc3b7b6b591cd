using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Scales;

/// <summary>Two points whose distance is known, such as the ends of a rule, in the plane that is measured.</summary>
/// <param name="First">One, px as displayed.</param>
/// <param name="Second">The other.</param>
/// <param name="DistanceMm">Their distance, mm; positive.</param>
public sealed record PointsScale(PixelPoint First, PixelPoint Second, double DistanceMm) : ScaleSource;
