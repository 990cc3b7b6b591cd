namespace SectionScan.Metrology.Frames;

/// <summary>A straight line in the section frame, marked by two of its points: a guide's axis, a floor line.</summary>
/// <param name="From">One point, mm.</param>
/// <param name="To">Another, mm; for an axis the one nearer the roof, for a floor line the one farther right.</param>
public sealed record SectionLine(SectionPoint From, SectionPoint To)
{
    /// <summary>Two points nearer to each other than this tell no direction, mm.</summary>
    public const double ShortestMm = 0.5;

    /// <summary>How far apart the two points are, mm.</summary>
    public double LengthMm => From.DistanceTo(To);

    /// <summary>The direction from the first point to the second, radians from x counter-clockwise.</summary>
    public double DirectionRadians => Math.Atan2(To.YMm - From.YMm, To.XMm - From.XMm);

    /// <summary>The point midway between the two.</summary>
    public SectionPoint Middle => new((From.XMm + To.XMm) / 2, (From.YMm + To.YMm) / 2);
}
