namespace SectionScan.Metrology.Uncertainty;

/// <summary>Propagation of distributions by seeded draws, after JCGM 101:2008.</summary>
public static class MonteCarlo
{
    /// <summary>Draws a model again and again.</summary>
    /// <param name="model">Gives one value of the measurand from draws of its inputs.</param>
    /// <param name="draws">How many, 100 or more; JCGM 101:2008, 7.2.2 advises 10 000 times 1/(1 − p) for a 95 % interval.</param>
    /// <param name="seed">The same seed gives the same numbers.</param>
    public static MonteCarloSummary Propagate(Func<Random, double> model, int draws, int seed)
    {
        ArgumentNullException.ThrowIfNull(model);
        return Propagate(random => [model(random)], 1, draws, seed)[0];
    }

    /// <summary>Draws a model of several measurands that share their inputs.</summary>
    internal static MonteCarloSummary[] Propagate(Func<Random, double[]> model, int outputs, int draws, int seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 100);
        var random = new Random(seed);
        var values = new double[outputs][];
        for (var k = 0; k < outputs; k++)
        {
            values[k] = new double[draws];
        }

        for (var i = 0; i < draws; i++)
        {
            var drawn = model(random);
            for (var k = 0; k < outputs; k++)
            {
                values[k][i] = drawn[k];
            }
        }

        return Array.ConvertAll(values, Summary);
    }

    private static MonteCarloSummary Summary(double[] values)
    {
        var mean = values.Average();
        var variance = values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1);
        Array.Sort(values);

        // JCGM 101:2008, 7.7.2: q = pM draws lie inside, r = (M − q)/2 below.
        var inside = (int)Math.Round(0.95 * values.Length);
        var below = (values.Length - inside) / 2;
        return new(mean, Math.Sqrt(variance), values[below], values[Math.Min(below + inside, values.Length - 1)], values.Length);
    }
}
