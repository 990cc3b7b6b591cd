using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Likeness;

/// <summary>How like two shapes are, and what was done to the second to bring it nearest to the first: mirrored left for right,
/// scaled, turned, in this order, each if allowed.</summary>
/// <param name="DistanceMm">Root mean square distance between points at the same share of the arc length, mm; zero for the same
/// shape.</param>
/// <param name="IsMirrored">True when the second was mirrored.</param>
/// <param name="Scale">The factor that the second was scaled by; 1 when it was not.</param>
/// <param name="Turn">The turn of the second, counter-clockwise; zero when it was not.</param>
public readonly record struct ShapeLikeness(double DistanceMm, bool IsMirrored, double Scale, Angle Turn);
