using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Likeness;

/// <summary>Compares two shapes by their descriptors.</summary>
public static class ShapeComparison
{
    /// <summary>How near <paramref name="other"/> can be brought to <paramref name="shape"/> with the freedom given.</summary>
    public static ShapeLikeness Compare(ShapeDescriptor shape, ShapeDescriptor other, LikenessFreedom freedom)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(other);
        ArgumentNullException.ThrowIfNull(freedom);
        var scale = freedom.MayScale && other.SizeMm > 0 ? shape.SizeMm / other.SizeMm : 1;
        var upright = Compare(shape.Numbers, other.Numbers, scale, freedom.MayTurn, false);
        if (!freedom.MayMirror)
        {
            return upright;
        }

        var mirrored = Compare(shape.Numbers, other.Mirrored().Numbers, scale, freedom.MayTurn, true);
        return mirrored.DistanceMm < upright.DistanceMm ? mirrored : upright;
    }

    private static ShapeLikeness Compare(ReadOnlySpan<float> a, ReadOnlySpan<float> b, double scale, bool mayTurn, bool isMirrored)
    {
        if (mayTurn)
        {
            var (squared, turn) = TurnSearch.Nearest(a, b, scale, double.PositiveInfinity)!.Value;
            return new(Math.Sqrt(squared), isMirrored, scale, Angle.FromRadians(turn));
        }

        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
        {
            var difference = a[i] - (scale * b[i]);
            sum += difference * difference;
        }

        return new(Math.Sqrt(sum), isMirrored, scale, default);
    }
}
