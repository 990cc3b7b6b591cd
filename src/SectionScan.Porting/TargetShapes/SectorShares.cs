using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Porting.TargetShapes;

/// <summary>A share for each of the eight sectors, going over smoothly from the middle of one sector to the middle of the next.</summary>
/// <param name="Values">The shares in the order of <see cref="OutlineRegion"/>, eight.</param>
public sealed record SectorShares(IReadOnlyList<double> Values)
{
    /// <summary>The same share everywhere.</summary>
    public static SectorShares Even(double share) => new(Enumerable.Repeat(share, 8).ToArray());

    /// <summary>The same with one sector changed.</summary>
    public SectorShares With(OutlineRegion region, double share)
    {
        var values = Values.ToArray();
        values[(int)region] = share;
        return new(values);
    }

    /// <summary>The share in a direction from the centroid.</summary>
    /// <param name="direction">From x counter-clockwise.</param>
    /// <remarks>6s⁵ − 15s⁴ + 10s³ between two middles (K. Perlin, "Improving noise", 2002): first and second derivative vanish at both
    /// ends, so that a change of share puts no step into the curvature.</remarks>
    public double At(Angle direction)
    {
        var turns = direction.Radians / (Math.PI / 4);
        var from = Math.Floor(turns);
        var s = turns - from;
        var blend = s * s * s * ((s * ((6 * s) - 15)) + 10);
        var sector = (((int)from % 8) + 8) % 8;
        return Values[sector] + (blend * (Values[(sector + 1) % 8] - Values[sector]));
    }
}
