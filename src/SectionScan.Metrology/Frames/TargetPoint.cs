namespace SectionScan.Metrology.Frames;

/// <summary>A place on the scale target, or right above it on a parallel plane. Unit: mm. Origin at the target's top-left corner,
/// x to the right, y <em>down</em> on the paper.</summary>
/// <param name="XMm">Millimetres to the right of the top-left corner.</param>
/// <param name="YMm">Millimetres below the top-left corner.</param>
public readonly record struct TargetPoint(double XMm, double YMm)
{
    /// <summary>The distance to another place, in mm.</summary>
    public double DistanceTo(TargetPoint other) => Math.Sqrt(((XMm - other.XMm) * (XMm - other.XMm)) + ((YMm - other.YMm) * (YMm - other.YMm)));
}
