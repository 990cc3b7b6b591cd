namespace SectionScan.Metrology.Frames;

/// <summary>A place on a section. Unit: mm. Origin at the section's centroid unless said otherwise, x to the right, y <em>up</em>
/// toward the roof of the port, seen looking with the flow.</summary>
/// <param name="XMm">Millimetres to the right.</param>
/// <param name="YMm">Millimetres toward the roof.</param>
public readonly record struct SectionPoint(double XMm, double YMm)
{
    /// <summary>The distance to another place, in mm.</summary>
    public double DistanceTo(SectionPoint other) => Math.Sqrt(((XMm - other.XMm) * (XMm - other.XMm)) + ((YMm - other.YMm) * (YMm - other.YMm)));
}
