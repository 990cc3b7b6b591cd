using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace SectionScan.Metrology.Fairing;

/// <summary>Fairs values given at even steps round a closed line: takes out waves shorter than a stated length, leaves longer ones, and
/// keeps within bounds.</summary>
/// <remarks>Least Σ(t − w)² + λΣ(Δ³t)²: smoothing by differences after E. Whittaker, "On a new method of graduation", 1923, in its third
/// order, so that the curvature itself comes out smooth (cited from memory). On a closed line it is a filter, 1/(1 + λ(2 sin(πh/L))⁶)
/// for waves of length L at steps h; λ is set so that waves of the stated length are halved. Bounds by the accelerated projected
/// gradient on the bounds' multipliers: A. Beck, M. Teboulle, "A fast iterative shrinkage-thresholding algorithm", 2009, with restart
/// after B. O'Donoghue, E. Candès, 2015 (all cited from memory). The filter's norm is 1, and so is the step.</remarks>
public sealed class PeriodicFairing
{
    private const int MostSteps = 500;

    /// <summary>Within this of a bound is on it, and of the best line too, mm.</summary>
    private const double ToleranceMm = 5e-4;

    private readonly double[] gains;

    /// <summary>Makes a fairing.</summary>
    /// <param name="count">How many values there are.</param>
    /// <param name="spacingMm">How far apart they are, mm.</param>
    /// <param name="wavelengthMm">Waves of this length are halved, shorter ones vanish; zero leaves everything as it is.</param>
    public PeriodicFairing(int count, double spacingMm, double wavelengthMm)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 8);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(spacingMm);
        ArgumentOutOfRangeException.ThrowIfNegative(wavelengthMm);
        gains = new double[count];
        var isPlain = wavelengthMm <= 2 * spacingMm;
        var lambda = isPlain ? 0 : 1 / Math.Pow(2 * Math.Sin(Math.PI * spacingMm / wavelengthMm), 6);
        for (var k = 0; k < count; k++)
        {
            gains[k] = 1 / (1 + (lambda * Math.Pow(2 * Math.Sin(Math.PI * k / count), 6)));
        }
    }

    /// <summary>The values faired, without bounds.</summary>
    public double[] Of(IReadOnlyList<double> wanted)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        var values = new Complex[gains.Length];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = wanted[i];
        }

        Fourier.Forward(values, FourierOptions.Matlab);
        for (var k = 0; k < values.Length; k++)
        {
            values[k] *= gains[k];
        }

        Fourier.Inverse(values, FourierOptions.Matlab);
        return Array.ConvertAll(values, value => value.Real);
    }

    /// <summary>The values faired within bounds. Where a bound holds, the line beside it bends early enough to meet it without a
    /// kink.</summary>
    /// <param name="wanted">The values.</param>
    /// <param name="lower">The least that each may be; may be −∞.</param>
    /// <param name="upper">The most that each may be; may be +∞, and is nowhere below the least.</param>
    public double[] Within(IReadOnlyList<double> wanted, IReadOnlyList<double> lower, IReadOnlyList<double> upper)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentNullException.ThrowIfNull(lower);
        ArgumentNullException.ThrowIfNull(upper);
        // One multiplier a place for both bounds: positive pushes up from the lower, negative down from the upper.
        var (push, ahead) = (new double[gains.Length], new double[gains.Length]);
        var faired = Of(wanted);
        var momentum = 0;
        for (var step = 0; step < MostSteps; step++)
        {
            var (worst, turn) = (0.0, 0.0);
            var next = new double[push.Length];
            for (var i = 0; i < next.Length; i++)
            {
                var free = faired[i] - ahead[i];
                next[i] = Math.Min(Math.Max(free, lower[i]), upper[i]) - free;
                worst = Math.Max(worst, Math.Abs(next[i] - ahead[i]));
                turn += (ahead[i] - next[i]) * (next[i] - push[i]);
            }

            if (worst < ToleranceMm)
            {
                break;
            }

            momentum = turn > 0 ? 0 : momentum + 1;
            var keep = momentum / (momentum + 3.0);
            for (var i = 0; i < next.Length; i++)
            {
                (ahead[i], push[i]) = (next[i] + (keep * (next[i] - push[i])), next[i]);
            }

            faired = Of([.. wanted.Zip(ahead, (wish, pushed) => wish + pushed)]);
        }

        for (var i = 0; i < faired.Length; i++)
        {
            faired[i] = Math.Min(Math.Max(faired[i], lower[i]), Math.Max(lower[i], upper[i]));
        }

        return faired;
    }
}
