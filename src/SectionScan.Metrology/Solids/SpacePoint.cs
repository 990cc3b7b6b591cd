namespace SectionScan.Metrology.Solids;

/// <summary>A place in space, mm. Right-handed: for a port x runs along the entry's axis with the flow, y to the left seen with the flow,
/// z toward the roof.</summary>
/// <param name="XMm">Millimetres with the flow.</param>
/// <param name="YMm">Millimetres to the left.</param>
/// <param name="ZMm">Millimetres toward the roof.</param>
public readonly record struct SpacePoint(double XMm, double YMm, double ZMm)
{
    /// <summary>The vector from <paramref name="right"/> to <paramref name="left"/>.</summary>
    public static SpacePoint operator -(SpacePoint left, SpacePoint right) => new(left.XMm - right.XMm, left.YMm - right.YMm, left.ZMm - right.ZMm);

    /// <summary>The scalar product.</summary>
    public double Dot(SpacePoint other) => (XMm * other.XMm) + (YMm * other.YMm) + (ZMm * other.ZMm);

    /// <summary>The vector product.</summary>
    public SpacePoint Cross(SpacePoint other) => new(
        (YMm * other.ZMm) - (ZMm * other.YMm), (ZMm * other.XMm) - (XMm * other.ZMm), (XMm * other.YMm) - (YMm * other.XMm));

    /// <summary>The distance from the origin, mm.</summary>
    public double Length => Math.Sqrt(Dot(this));
}
