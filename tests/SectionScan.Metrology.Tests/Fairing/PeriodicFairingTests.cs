using SectionScan.Metrology.Fairing;

namespace SectionScan.Metrology.Tests.Fairing;

/// <summary>Waves of known length on a line of 102.4 mm, 1024 places.</summary>
public class PeriodicFairingTests
{
    private const int Count = 1024;
    private const double SpacingMm = 0.1;

    // 102.4 mm over 16 waves is 6.4 mm a wave: at the stated length the gain is 1/(1 + 1), by the filter's own formula.
    [Fact]
    public void Waves_of_the_stated_length_are_halved()
    {
        var faired = new PeriodicFairing(Count, SpacingMm, 6.4).Of(Wave(16));

        Assert.Equal(0.5, faired.Max(), 1e-6);
    }

    // Third order: gain 1/(1 + (6.4/L)⁶) with the discrete sines in place of the lengths: at half the length 1/(1 + (2 cos π/64)⁶),
    // near 1/65; at twice 64/65.
    [Theory]
    [InlineData(32, 0.0154945)]
    [InlineData(8, 64.0 / 65)]
    [InlineData(2, 1 - (1.0 / 262145))]
    public void Shorter_waves_vanish_and_longer_ones_stay(int waves, double gain) =>
        Assert.Equal(gain, new PeriodicFairing(Count, SpacingMm, 6.4).Of(Wave(waves)).Max(), 0.002 * gain);

    [Fact]
    public void A_length_of_zero_changes_nothing()
    {
        var faired = new PeriodicFairing(Count, SpacingMm, 0).Of(Wave(200));

        Assert.All(Wave(200).Zip(faired), pair => Assert.Equal(pair.First, pair.Second, 1e-9));
    }

    [Fact]
    public void Within_bounds_no_value_passes_them_and_the_line_meets_them_smoothly()
    {
        var wanted = Enumerable.Repeat(1.0, Count).ToArray();
        var upper = Enumerable.Range(0, Count).Select(i => i is >= 400 and < 600 ? 0.4 : double.PositiveInfinity).ToArray();
        var lower = Enumerable.Repeat(double.NegativeInfinity, Count).ToArray();

        var faired = new PeriodicFairing(Count, SpacingMm, 8).Within(wanted, lower, upper);

        Assert.All(Enumerable.Range(0, Count), i => Assert.True(faired[i] <= upper[i] + 1e-9));
        Assert.Equal(1, faired[0], 0.03);
        Assert.InRange(faired[500], 0.3, 0.4);

        // A step of 0.6 mm cut square has a second difference of 0.6; a fair line across 8 mm bends by a hundredth of that a step.
        Assert.InRange(Enumerable.Range(1, Count - 2).Max(i => Math.Abs(faired[i - 1] - (2 * faired[i]) + faired[i + 1])), 0, 0.006);
    }

    private static double[] Wave(int waves) => [.. Enumerable.Range(0, Count).Select(i => Math.Cos(2 * Math.PI * waves * i / Count))];
}
