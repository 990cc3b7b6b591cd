using MathNet.Numerics.Distributions;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;

namespace SectionScan.Metrology.Tests.Measures;

public sealed class FittedCircleTests
{
    [Fact]
    public void Three_points_give_the_circle_through_them()
    {
        // Menger curvature 4·area/(abc): (0,0), (3,4), (6,0) lie on a circle of radius 3.125.
        var circle = FittedCircle.Taubin([new(0, 0), new(3, 4), new(6, 0)], [1, 1, 1]);

        Assert.NotNull(circle);
        Assert.Equal(3.125, circle.RadiusMm, 1e-9);
        Assert.Equal(0, circle.Centre.DistanceTo(new(3, 0.875)), 1e-9);
        Assert.Equal(0, circle.ResidualRmsMm, 1e-9);
    }

    [Theory]
    [InlineData(1, 9.800776755)]
    [InlineData(5, 9.81940704)]
    public void Three_points_at_the_end_of_an_ellipse_give_nearly_its_radius_of_curvature(double degrees, double radius)
    {
        // Ellipse 20, 14: b²/a = 9.8 at the end of the long axis; three points at ∓degrees of the parameter angle, by Menger.
        var (sin, cos) = Math.SinCos(double.DegreesToRadians(degrees));

        var circle = FittedCircle.Taubin([new(20 * cos, -14 * sin), new(20, 0), new(20 * cos, 14 * sin)], [1, 1, 1]);

        Assert.Equal(radius, circle!.RadiusMm, 1e-6);
    }

    [Fact]
    public void A_short_noisy_arc_is_not_fitted_too_small()
    {
        // Arc of 60°, R 12, noise 0.03 mm, 60 points: in an independent simulation Kåsa's fit averages 11.964 and Taubin's 12.002,
        // both with a spread of 0.087. The mean of 2000 fits is known to 0.002.
        var random = new Random(7);
        var radii = Enumerable.Range(0, 2000).Select(_ => FittedCircle.Taubin(
            [.. Enumerable.Range(0, 60).Select(i =>
            {
                var (sin, cos) = Math.SinCos(double.DegreesToRadians(60.0 * i / 59));
                return new SectionPoint((12 * cos) + Normal.Sample(random, 0, 0.03), (12 * sin) + Normal.Sample(random, 0, 0.03));
            })],
            [.. Enumerable.Repeat(1.0, 60)])!.RadiusMm).ToArray();

        Assert.Equal(12.002, radii.Average(), 0.006);
        Assert.Equal(0.087, MathNet.Numerics.Statistics.Statistics.StandardDeviation(radii), 0.005);
    }

    [Fact]
    public void Points_on_one_line_or_in_one_place_have_no_circle()
    {
        Assert.Null(FittedCircle.Taubin([new(0, 0), new(1, 1), new(2, 2), new(5, 5)], [1, 1, 1, 1]));
        Assert.Null(FittedCircle.Taubin([new(1, 1), new(1, 1), new(1, 1)], [1, 1, 1]));
        Assert.Throws<ArgumentException>(() => FittedCircle.Taubin([new(0, 0), new(1, 1)], [1, 1]));
    }
}
