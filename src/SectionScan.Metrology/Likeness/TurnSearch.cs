using System.Numerics;

namespace SectionScan.Metrology.Likeness;

/// <summary>Finds the turn that brings one shape nearest to another. Turning by θ and letting the outline begin where z_1 is real
/// again multiplies z_k by exp(iθ(1 − k)); the squared distance is |a|² + |b|² − 2g(θ) with the trigonometric polynomial
/// g(θ) = Re Σ ā_k b_k exp(iθ(1 − k)).</summary>
internal static class TurnSearch
{
    private const int CoefficientCount = ShapeDescriptor.Length / 2;

    // Four samples to a period of the fastest term (order 17), so that each hill of g has one on its slope.
    private const int AngleCount = 64;
    private const double Step = 2 * Math.PI / AngleCount;

    private static readonly float[] Cosines = Table(Math.Cos);
    private static readonly float[] Sines = Table(Math.Sin);

    /// <summary>The least squared distance in mm² between a and scale·b over all turns, with the turn; or null when it is certain to
    /// be above <paramref name="limitMm2"/>.</summary>
    public static (double SquaredMm2, double Turn)? Nearest(ReadOnlySpan<float> a, ReadOnlySpan<float> b, double scale, double limitMm2)
    {
        Span<float> re = stackalloc float[CoefficientCount];
        Span<float> im = stackalloc float[CoefficientCount];
        double squares = 0, curvature = 0;
        for (var i = 0; i < CoefficientCount; i++)
        {
            double ar = a[2 * i], ai = a[(2 * i) + 1], br = scale * b[2 * i], bi = scale * b[(2 * i) + 1];
            var (pr, pi) = ((ar * br) + (ai * bi), (ar * bi) - (ai * br));
            var order = 1 - ShapeDescriptor.OrderAt(i);
            squares += (ar * ar) + (ai * ai) + (br * br) + (bi * bi);
            curvature += order * order * Math.Sqrt((pr * pr) + (pi * pi));
            (re[i], im[i]) = ((float)pr, (float)pi);
        }

        Span<float> g = stackalloc float[AngleCount];
        Sample(re, im, g);
        var best = g[0];
        foreach (var value in g)
        {
            best = Math.Max(best, value);
        }

        // Between two samples g rises by no more than the largest |g''| times Step²/8; the rest is for single precision.
        var rise = (curvature * Step * Step / 8) + (1e-5 * squares);
        return squares - (2 * (best + rise)) > limitMm2 ? null : Climb(a, b, scale, g, best - rise);
    }

    private static (double SquaredMm2, double Turn) Climb(
        ReadOnlySpan<float> a, ReadOnlySpan<float> b, double scale, ReadOnlySpan<float> g, double least)
    {
        var (nearest, turn) = (double.MaxValue, 0.0);
        for (var j = 0; j < AngleCount; j++)
        {
            if (g[j] < least || g[j] < g[(j + 1) % AngleCount] || g[j] < g[(j + AngleCount - 1) % AngleCount])
            {
                continue;
            }

            var theta = Top(a, b, j * Step);
            var squared = Squared(a, b, scale, theta);
            if (squared < nearest)
            {
                (nearest, turn) = (squared, theta);
            }
        }

        return (nearest, Math.IEEERemainder(turn, 2 * Math.PI));
    }

    // Newton on g' = 0, kept within the samples on both sides; the scale changes the height of the hill, not its place.
    private static double Top(ReadOnlySpan<float> a, ReadOnlySpan<float> b, double start)
    {
        var theta = start;
        for (var round = 0; round < 12; round++)
        {
            double first = 0, second = 0;
            for (var i = 0; i < CoefficientCount; i++)
            {
                double order = 1 - ShapeDescriptor.OrderAt(i);
                var (sin, cos) = Math.SinCos(order * theta);
                double ar = a[2 * i], ai = a[(2 * i) + 1], br = b[2 * i], bi = b[(2 * i) + 1];
                var (pr, pi) = ((ar * br) + (ai * bi), (ar * bi) - (ai * br));
                first -= order * ((pr * sin) + (pi * cos));
                second -= order * order * ((pr * cos) - (pi * sin));
            }

            var step = second < 0 ? -first / second : Math.Sign(first) * Step / 8;
            var next = Math.Clamp(theta + step, start - Step, start + Step);
            var change = Math.Abs(next - theta);
            theta = next;
            if (change < 1e-10)
            {
                break;
            }
        }

        return theta;
    }

    // By differences and not from g, which would cancel to nothing for shapes that are nearly the same.
    private static double Squared(ReadOnlySpan<float> a, ReadOnlySpan<float> b, double scale, double theta)
    {
        var sum = 0.0;
        for (var i = 0; i < CoefficientCount; i++)
        {
            var turned = new Complex(b[2 * i], b[(2 * i) + 1]) * Complex.FromPolarCoordinates(scale, (1 - ShapeDescriptor.OrderAt(i)) * theta);
            var (dr, di) = (a[2 * i] - turned.Real, a[(2 * i) + 1] - turned.Imaginary);
            sum += (dr * dr) + (di * di);
        }

        return sum;
    }

    private static void Sample(ReadOnlySpan<float> re, ReadOnlySpan<float> im, Span<float> g)
    {
        g.Clear();
        for (var i = 0; i < CoefficientCount; i++)
        {
            var cosines = Cosines.AsSpan(i * AngleCount, AngleCount);
            var sines = Sines.AsSpan(i * AngleCount, AngleCount);
            var (pr, pi) = (new Vector<float>(re[i]), new Vector<float>(im[i]));
            for (var j = 0; j < AngleCount; j += Vector<float>.Count)
            {
                var sum = new Vector<float>(g[j..]) + (pr * new Vector<float>(cosines[j..])) - (pi * new Vector<float>(sines[j..]));
                sum.CopyTo(g[j..]);
            }
        }
    }

    private static float[] Table(Func<double, double> wave)
    {
        var table = new float[CoefficientCount * AngleCount];
        for (var i = 0; i < CoefficientCount; i++)
        {
            for (var j = 0; j < AngleCount; j++)
            {
                table[(i * AngleCount) + j] = (float)wave((1 - ShapeDescriptor.OrderAt(i)) * j * Step);
            }
        }

        return table;
    }
}
