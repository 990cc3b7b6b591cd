using MathNet.Numerics.Distributions;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Metrology.Tests.Uncertainty;

public sealed class MonteCarloTests
{
    private const int Draws = 200_000;

    [Fact]
    public void The_sum_of_four_rectangular_quantities_has_the_supplements_interval()
    {
        // JCGM 101:2008, 9.2.3: four rectangular quantities of standard deviation 1: u = 2, 95 % interval ±3.88 (the formula
        // 2√3·(2 − 0.6^¼) gives 3.879406741), against ±3.92 of the normal law.
        var half = Math.Sqrt(3);

        var summary = MonteCarlo.Propagate(
            random => Enumerable.Range(0, 4).Sum(_ => ContinuousUniform.Sample(random, -half, half)), Draws, 1);

        // u of the mean 2/√M = 0.0045, of the standard deviation 0.003, of an end of the interval 0.0106; three times each.
        Assert.Equal(0, summary.Mean, 0.014);
        Assert.Equal(2, summary.StandardDeviation, 0.010);
        Assert.Equal(-3.879406741, summary.Low95, 0.032);
        Assert.Equal(3.879406741, summary.High95, 0.032);
    }

    [Fact]
    public void The_area_of_a_disc_of_uncertain_diameter_has_its_exact_mean_and_spread()
    {
        // A = πD²/4, D normal(40, 0.05): mean π(40² + 0.05²)/4 = 1256.63902493, standard deviation 3.14159388077.
        var summary = MonteCarlo.Propagate(
            random =>
            {
                var diameter = Normal.Sample(random, 40, 0.05);
                return Math.PI * diameter * diameter / 4;
            },
            Draws,
            40);

        Assert.Equal(1256.63902493, summary.Mean, 3 * 3.1416 / Math.Sqrt(Draws));
        Assert.Equal(3.14159388077, summary.StandardDeviation, 3 * 3.1416 / Math.Sqrt(2.0 * Draws));
        Assert.Equal(Draws, summary.Draws);
    }

    [Fact]
    public void The_same_seed_gives_the_same_numbers_and_another_seed_others()
    {
        var first = MonteCarlo.Propagate(random => random.NextDouble(), 1000, 1);

        Assert.Equal(first, MonteCarlo.Propagate(random => random.NextDouble(), 1000, 1));
        Assert.NotEqual(first, MonteCarlo.Propagate(random => random.NextDouble(), 1000, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Propagate(random => random.NextDouble(), 99, 1));
    }
}
