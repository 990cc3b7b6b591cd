using MathNet.Numerics.Distributions;
using SectionScan.Imaging.Edges;

namespace SectionScan.Imaging.Tests.Edges;

/// <summary>Profiles are made with the normal distribution function of Math.NET Numerics, which knows nothing of the tables used here.</summary>
public sealed class EdgeModelTests
{
    private const double BlurMm = 0.09;
    private const double StepMm = 0.04;
    private const double FromMm = -0.6;

    private readonly BlurredSteps steps = new(BlurMm, StepMm);

    [Theory]
    [InlineData(31)]
    [InlineData(36)]
    public void A_profile_without_wall_is_told_by_its_levels(int count)
    {
        var model = new EdgeModel(steps, 0, double.NaN, 0, 1e-9);
        var left = LeftOver(model, Profile(count, 0.037, 0), 0.037, out var levels);

        Assert.InRange(left, 0, 1e-9);
        Assert.Equal(0.3, levels.Face, 1e-4);
        Assert.Equal(0.8, levels.Ground, 1e-4);
        Assert.Equal(-0.1, levels.Slope, 1e-3);
    }

    [Fact]
    public void A_profile_with_a_strip_of_wall_is_told_by_its_levels()
    {
        var model = new EdgeModel(steps, 0.31, double.NaN, 0, 1e-9);
        var left = LeftOver(model, Profile(45, 0.037, 0.31), 0.037, out var levels);

        Assert.InRange(left, 0, 1e-9);
        Assert.Equal(0.3, levels.Face, 1e-4);
        Assert.Equal(0.15, levels.Wall, 1e-4);
        Assert.Equal(0.8, levels.Ground, 1e-4);
        Assert.Equal(-0.1, levels.Slope, 1e-3);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(0.003)]
    [InlineData(0.12)]
    public void The_edge_is_found_with_and_without_the_grid_solved_beforehand(double edgeMm)
    {
        var model = new EdgeModel(steps, 0, double.NaN, 0, 1e-9);
        var profile = Profile(31, edgeMm, 0);
        var (plain, _, _) = EdgeSearch.Minimise(profile, FromMm, model, 0, 0.24, 0.08);
        var (solved, contrast, _) = EdgeSearch.Minimise(
            profile, FromMm, model, 0, 0.24, 0.08, EdgeSearch.GridOf(model, profile.Length, FromMm, 0.24, 0.08));

        Assert.Equal(plain, solved, 1e-9);
        // A twentieth of a pixel: the search ends where no parabola leads on.
        Assert.Equal(edgeMm, solved, 0.004);
        Assert.InRange(contrast, 0.49, 0.51);
    }

    [Theory]
    [InlineData(-4)]
    [InlineData(-0.123)]
    [InlineData(0.3)]
    public void A_step_is_the_normal_distribution_function_at_every_place(double firstMm)
    {
        var shares = new double[BlurredSteps.RoomFor(110)];
        steps.Fill(firstMm, 110, shares);

        for (var k = 0; k < 110; k++)
        {
            Assert.Equal(Normal.CDF(0, BlurMm, firstMm + (k * StepMm)), shares[k], 2e-6);
        }

        Assert.All(shares[110..], share => Assert.Equal(0, share));
    }

    private static double LeftOver(EdgeModel model, float[] light, double edgeMm, out EdgeLevels levels) =>
        model.LeftOver(new EdgeProfile(light, FromMm, new double[BlurredSteps.RoomFor(light.Length)]), edgeMm, out levels);

    /// <summary>Face 0.3, wall 0.15, ground 0.8 falling by 0.1 a mm.</summary>
    private static float[] Profile(int count, double edgeMm, double stripMm) => [.. Enumerable.Range(0, count).Select(k =>
    {
        var s = FromMm + (k * StepMm) - edgeMm;
        var (leave, arrive) = (Normal.CDF(0, BlurMm, s), Normal.CDF(0, BlurMm, s - stripMm));
        return (float)((0.3 * (1 - leave)) + (0.15 * (leave - arrive)) + (arrive * (0.8 - (0.1 * (s - stripMm)))));
    })];
}
