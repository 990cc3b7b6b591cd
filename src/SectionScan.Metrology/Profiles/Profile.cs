using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Profiles;

/// <summary>An open line of straight pieces, such as a port's floor cut lengthwise. Immutable.</summary>
public sealed class Profile
{
    private readonly SectionPoint[] points;
    private readonly double[] lengths;

    /// <summary>A line through points.</summary>
    /// <param name="points">Two or more, mm, neighbours apart.</param>
    /// <exception cref="ArgumentException">Too few points, or neighbours that are one place.</exception>
    public Profile(IEnumerable<SectionPoint> points)
    {
        this.points = [.. points];
        lengths = new double[this.points.Length];
        for (var i = 1; i < lengths.Length; i++)
        {
            lengths[i] = lengths[i - 1] + this.points[i - 1].DistanceTo(this.points[i]);
        }

        if (this.points.Length < 2 || Enumerable.Range(1, lengths.Length - 1).Any(i => !(lengths[i] > lengths[i - 1])))
        {
            throw new ArgumentException("A profile has two points or more, each apart from the next.", nameof(points));
        }
    }

    /// <summary>The corners, mm.</summary>
    public ReadOnlySpan<SectionPoint> Points => points;

    /// <summary>The first point.</summary>
    public SectionPoint First => points[0];

    /// <summary>The last point.</summary>
    public SectionPoint Last => points[^1];

    /// <summary>The length along the line, mm.</summary>
    public double LengthMm => lengths[^1];

    /// <summary>The place at a length along the line; before the first and beyond the last point straight on.</summary>
    public SectionPoint At(double lengthMm)
    {
        var found = Array.BinarySearch(lengths, lengthMm);
        var i = Math.Clamp(found >= 0 ? found : ~found - 1, 0, points.Length - 2);
        var share = (lengthMm - lengths[i]) / (lengths[i + 1] - lengths[i]);
        return new(
            points[i].XMm + (share * (points[i + 1].XMm - points[i].XMm)), points[i].YMm + (share * (points[i + 1].YMm - points[i].YMm)));
    }

    /// <summary>The unit direction at a length, from the chord over <paramref name="halfWindowMm"/> to either side.</summary>
    public (double X, double Y) DirectionAt(double lengthMm, double halfWindowMm)
    {
        var (from, to) = (At(Math.Max(0, lengthMm - halfWindowMm)), At(Math.Min(LengthMm, lengthMm + halfWindowMm)));
        var chord = from.DistanceTo(to);
        return ((to.XMm - from.XMm) / chord, (to.YMm - from.YMm) / chord);
    }

    /// <summary>Places at even steps along the line, both ends among them.</summary>
    /// <param name="stepMm">The longest step.</param>
    public IReadOnlyList<(double LengthMm, SectionPoint Place)> Even(double stepMm)
    {
        var count = Math.Max(1, (int)Math.Ceiling(LengthMm / stepMm));
        return [.. Enumerable.Range(0, count + 1).Select(k => LengthMm * k / count).Select(at => (at, At(at)))];
    }

    /// <summary>The same line carried straight on at both ends, in the direction of its last stretch.</summary>
    public Profile Extended(double byMm, double windowMm)
    {
        var (start, end) = (DirectionAt(0, windowMm), DirectionAt(LengthMm, windowMm));
        return new([
            new(First.XMm - (byMm * start.X), First.YMm - (byMm * start.Y)), .. points, new(Last.XMm + (byMm * end.X), Last.YMm + (byMm * end.Y))]);
    }

    /// <summary>Every point replaced.</summary>
    public Profile Mapped(Func<SectionPoint, SectionPoint> map) => new(points.Select(map));
}
