using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Outlines;

/// <summary>A rational B-spline curve (NURBS).</summary>
/// <remarks>De Boor's algorithm on homogeneous coordinates: L. Piegl, W. Tiller, "The NURBS Book", 1997, chapters 3 and 4 (cited from
/// memory).</remarks>
internal sealed class SplineCurve
{
    private readonly int degree;
    private readonly double[] knots;
    private readonly (double X, double Y, double W)[] controls;

    private SplineCurve(int degree, double[] knots, (double X, double Y, double W)[] controls)
    {
        this.degree = degree;
        this.knots = knots;
        this.controls = controls;
    }

    /// <summary>The curve, or null when the numbers of knots, points and weights do not belong together or the knots fall.</summary>
    public static SplineCurve? From(int degree, IReadOnlyList<double> knots, IReadOnlyList<SectionPoint> points, IReadOnlyList<double> weights)
    {
        var isSound = degree is >= 1 and <= 25
            && points.Count > degree
            && knots.Count == points.Count + degree + 1
            && (weights.Count == 0 || weights.Count == points.Count)
            && weights.All(weight => weight > 0)
            && knots.Zip(knots.Skip(1)).All(pair => pair.First <= pair.Second)
            && knots[degree] < knots[points.Count];
        return isSound
            ? new(degree, [.. knots], [.. points.Select((point, i) =>
            {
                var weight = weights.Count == 0 ? 1 : weights[i];
                return (point.XMm * weight, point.YMm * weight, weight);
            })])
            : null;
    }

    /// <summary>Appends the whole curve, its first point included.</summary>
    public void AddTo(List<SectionPoint> points, Chords chords)
    {
        points.Add(At(knots[degree], degree));
        for (var span = degree; span < controls.Length; span++)
        {
            if (knots[span] < knots[span + 1])
            {
                var fixedSpan = span;
                chords.AddCurve(points, t => At(t, fixedSpan), knots[span], knots[span + 1]);
            }
        }
    }

    private SectionPoint At(double t, int span)
    {
        Span<(double X, double Y, double W)> d = stackalloc (double, double, double)[degree + 1];
        for (var j = 0; j <= degree; j++)
        {
            d[j] = controls[j + span - degree];
        }

        for (var r = 1; r <= degree; r++)
        {
            for (var j = degree; j >= r; j--)
            {
                var (low, high) = (knots[j + span - degree], knots[j + 1 + span - r]);
                var share = high > low ? (t - low) / (high - low) : 0;
                d[j] = (
                    ((1 - share) * d[j - 1].X) + (share * d[j].X),
                    ((1 - share) * d[j - 1].Y) + (share * d[j].Y),
                    ((1 - share) * d[j - 1].W) + (share * d[j].W));
            }
        }

        return new(d[degree].X / d[degree].W, d[degree].Y / d[degree].W);
    }
}
