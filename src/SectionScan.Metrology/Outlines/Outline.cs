using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Valid;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.Outlines;

/// <summary>The outline of a section: one simple closed polygon in mm, section frame, counter-clockwise, first point not repeated.
/// Immutable.</summary>
public sealed class Outline
{
    private readonly SectionPoint[] points;

    private Outline(SectionPoint[] points) => this.points = points;

    /// <summary>N ≥ 3 points in mm, counter-clockwise, first point not repeated.</summary>
    public ReadOnlySpan<SectionPoint> Points => points;

    /// <summary>The number of points.</summary>
    public int Count => points.Length;

    /// <summary>The point at <paramref name="index"/>, counted round and round: −1 is the last one, Count the first.</summary>
    public SectionPoint this[int index] => points[((index % points.Length) + points.Length) % points.Length];

    /// <summary>Checks and adopts a polygon. A clockwise one is turned round, repeated neighbours are dropped.</summary>
    /// <param name="points">The corners in mm; the first may be repeated at the end.</param>
    /// <param name="where">What the outline belongs to, for the message of a refusal.</param>
    /// <returns>The outline, or <c>outline-not-finite</c>, <c>outline-too-small</c> or <c>outline-crosses-itself</c>.</returns>
    public static Result<Outline> From(IEnumerable<SectionPoint> points, string where = "outline")
    {
        ArgumentNullException.ThrowIfNull(points);
        var kept = new List<SectionPoint>();
        foreach (var point in points)
        {
            if (!double.IsFinite(point.XMm) || !double.IsFinite(point.YMm))
            {
                return OutlineProblems.NotFinite(where, kept.Count);
            }

            if (kept.Count == 0 || kept[^1] != point)
            {
                kept.Add(point);
            }
        }

        if (kept.Count > 1 && kept[0] == kept[^1])
        {
            kept.RemoveAt(kept.Count - 1);
        }

        var area = kept.Count < 3 ? 0 : PolygonMoments.SignedAreaMm2(kept.ToArray());
        if (kept.Count < 3 || area == 0)
        {
            return OutlineProblems.TooSmall(where, kept.Count);
        }

        if (area < 0)
        {
            kept.Reverse();
        }

        var adopted = new Outline([.. kept]);
        var check = new IsValidOp(adopted.ToPolygon());
        return check.IsValid
            ? adopted
            : OutlineProblems.CrossesItself(where, check.ValidationError.Coordinate.X, check.ValidationError.Coordinate.Y);
    }

    /// <summary>The same shape with every point replaced by <paramref name="map"/>, which must keep it simple (a rigid motion, a
    /// scaling or a mirror image); the winding is put right.</summary>
    public Outline Mapped(Func<SectionPoint, SectionPoint> map)
    {
        ArgumentNullException.ThrowIfNull(map);
        var mapped = Array.ConvertAll(points, p => map(p));
        if (PolygonMoments.SignedAreaMm2(mapped) < 0)
        {
            Array.Reverse(mapped);
        }

        return new(mapped);
    }

    /// <summary>Moved by (<paramref name="xMm"/>, <paramref name="yMm"/>).</summary>
    public Outline Moved(double xMm, double yMm) => Mapped(p => new(p.XMm + xMm, p.YMm + yMm));

    /// <summary>Turned about the origin, counter-clockwise.</summary>
    public Outline Turned(Angle angle)
    {
        var (sin, cos) = Math.SinCos(angle.Radians);
        return Mapped(p => new((p.XMm * cos) - (p.YMm * sin), (p.XMm * sin) + (p.YMm * cos)));
    }

    /// <summary>Mirrored left for right about the y axis.</summary>
    public Outline Mirrored() => Mapped(p => new(-p.XMm, p.YMm));

    /// <summary>Scaled about the origin.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not a positive finite number.</exception>
    public Outline Scaled(double factor)
    {
        if (!double.IsFinite(factor) || factor <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(factor), factor, "A scale factor must be positive.");
        }

        return Mapped(p => new(p.XMm * factor, p.YMm * factor));
    }

    /// <summary>Points at even steps of arc length along the polygon, beginning at the first point.</summary>
    /// <param name="count">How many points, 3 or more.</param>
    public SectionPoint[] Resampled(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 3);
        var lengths = new double[points.Length + 1];
        for (var i = 0; i < points.Length; i++)
        {
            lengths[i + 1] = lengths[i] + points[i].DistanceTo(this[i + 1]);
        }

        var resampled = new SectionPoint[count];
        var side = 0;
        for (var k = 0; k < count; k++)
        {
            var at = lengths[^1] * k / count;
            while (side < points.Length - 1 && lengths[side + 1] <= at)
            {
                side++;
            }

            var share = (at - lengths[side]) / (lengths[side + 1] - lengths[side]);
            var (from, to) = (points[side], this[side + 1]);
            resampled[k] = new(from.XMm + (share * (to.XMm - from.XMm)), from.YMm + (share * (to.YMm - from.YMm)));
        }

        return resampled;
    }

    /// <summary>The outline as a NetTopologySuite polygon, for overlay, buffer and distance.</summary>
    public Polygon ToPolygon()
    {
        var ring = new Coordinate[points.Length + 1];
        for (var i = 0; i < ring.Length; i++)
        {
            ring[i] = new(this[i].XMm, this[i].YMm);
        }

        return new(new LinearRing(ring));
    }
}
