using MathNet.Numerics.Interpolation;

namespace SectionScan.Porting.Schedules;

/// <summary>A smooth curve through points: piecewise cubic Hermite, its slope at each point that of the parabola through it and its
/// neighbours (Bessel's choice; de Boor, A Practical Guide to Splines, ch. IV, from memory). Where the points run one way the slope is
/// held to three times the lesser neighbouring one, so that the curve runs that way too (Fritsch and Carlson 1980, SIAM J. Numer. Anal.
/// 17:238, from memory).</summary>
internal sealed class SmoothCurve
{
    private const double MostSteepness = 3;

    private readonly double[] at;
    private readonly double[] values;
    private readonly CubicSpline? cubic;

    /// <summary>A curve through two points or more, their places growing; straight through two.</summary>
    public SmoothCurve(double[] at, double[] values)
    {
        if (at.Length < 2 || at.Length != values.Length || at.Zip(at.Skip(1)).Any(pair => !(pair.Second > pair.First)))
        {
            throw new ArgumentException("A curve needs two places or more that grow, and a value for each.", nameof(at));
        }

        (this.at, this.values) = (at, values);
        cubic = at.Length == 2 ? null : CubicSpline.InterpolateHermiteSorted(at, values, Slopes(at, values));
    }

    public double At(double place) => cubic is null ? StraightAt(place) : cubic.Interpolate(Math.Clamp(place, at[0], at[^1]));

    public double StraightAt(double place)
    {
        var (i, share) = Interval(place);
        return values[i] + (share * (values[i + 1] - values[i]));
    }

    /// <summary>Between which points a place lies, and how far from the first toward the second, 0 to 1.</summary>
    public (int Index, double Share) Interval(double place)
    {
        var found = Array.BinarySearch(at, place);
        var i = Math.Clamp(found >= 0 ? found : ~found - 1, 0, at.Length - 2);
        return (i, Math.Clamp((place - at[i]) / (at[i + 1] - at[i]), 0, 1));
    }

    private static double[] Slopes(double[] at, double[] values)
    {
        var last = at.Length - 1;
        var steps = new double[last];
        var chords = new double[last];
        for (var i = 0; i < last; i++)
        {
            steps[i] = at[i + 1] - at[i];
            chords[i] = (values[i + 1] - values[i]) / steps[i];
        }

        var slopes = new double[at.Length];
        for (var i = 1; i < last; i++)
        {
            var parabola = ((steps[i] * chords[i - 1]) + (steps[i - 1] * chords[i])) / (steps[i - 1] + steps[i]);
            slopes[i] = chords[i - 1] * chords[i] < 0 ? parabola : Held(parabola, Lesser(chords[i - 1], chords[i]));
        }

        slopes[0] = Held((2 * chords[0]) - slopes[1], chords[0]);
        slopes[last] = Held((2 * chords[last - 1]) - slopes[last - 1], chords[last - 1]);
        return slopes;
    }

    private static double Lesser(double a, double b) => Math.Abs(a) < Math.Abs(b) ? a : b;

    private static double Held(double slope, double chord) =>
        slope * chord <= 0 ? 0 : Math.CopySign(Math.Min(Math.Abs(slope), MostSteepness * Math.Abs(chord)), chord);
}
