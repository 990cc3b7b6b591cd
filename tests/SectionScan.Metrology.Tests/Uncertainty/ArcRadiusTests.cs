using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Uncertainty;

public sealed class ArcRadiusTests
{
    [Fact]
    public void The_floor_and_the_roof_of_a_circle_have_its_radius_and_centre()
    {
        var circle = AnalyticShapes.Circle(18).Moved(3, -2);

        foreach (var radius in new[] { ArcRadius.OfFloor(circle, []).ValueOrThrow(), ArcRadius.OfRoof(circle, []).ValueOrThrow() })
        {
            Assert.Equal(18, radius.RadiusMm.Value, 1e-6);
            Assert.Equal(0, radius.Centre.DistanceTo(new(3, -2)), 1e-6);
            // asin 0.6 twice; the stretch ends at whole corners, 0.5° apart.
            Assert.InRange(radius.Arc.Degrees, 73.74 - 1, 73.74);
        }
    }

    [Fact]
    public void A_D_section_has_the_radius_of_its_round_roof_and_none_of_its_flat_floor()
    {
        var section = AnalyticShapes.DSection(18, 8);

        Assert.Equal(18, ArcRadius.OfRoof(section, []).ValueOrThrow().RadiusMm.Value, 1e-6);
        Assert.False(ArcRadius.OfFloor(section, []).TryGet(out _, out var problem));
        Assert.Equal("arc-too-flat", problem.Code);
        Assert.Contains("floor", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_ellipses_floor_lies_near_its_radius_of_curvature()
    {
        // a²/b = 28.571 at the very bottom, less to the sides: three points there, at 0 and ±12 mm, lie on a circle of
        // (12² + 2.8²)/(2·2.8) = 27.114 mm.
        var radius = ArcRadius.OfFloor(AnalyticShapes.Ellipse(20, 14), []).ValueOrThrow();

        Assert.InRange(radius.RadiusMm.Value, 27.114, 28.571);
    }

    [Fact]
    public void Floors_that_are_flat_pointed_hollow_or_too_coarse_have_no_radius()
    {
        Assert.False(ArcRadius.OfFloor(AnalyticShapes.Stadium(14, 12), []).TryGet(out _, out var flat));
        Assert.Equal("arc-too-flat", flat.Code);

        var pointed = Outline.From(AnalyticShapes.Polygon((0, -12), (20, 0), (0, 20), (-20, 0)).Resampled(360)).ValueOrThrow();
        Assert.False(ArcRadius.OfFloor(pointed, []).TryGet(out _, out var notRound));
        Assert.Equal("arc-not-round", notRound.Code);

        var hollow = AnalyticShapes.Rectangle(40, 30);
        var bumped = Outline.From(hollow.Resampled(560).Select(p => p.YMm > -14.9 || Math.Abs(p.XMm) > 15
            ? p
            : new SectionPoint(p.XMm, p.YMm + Math.Sqrt((18 * 18) - (p.XMm * p.XMm)) - Math.Sqrt((18 * 18) - (15 * 15))))).ValueOrThrow();
        Assert.False(ArcRadius.OfFloor(bumped, []).TryGet(out _, out var bulging));
        Assert.Equal("arc-hollow", bulging.Code);

        Assert.False(ArcRadius.OfFloor(hollow, []).TryGet(out _, out var fewPoints));
        Assert.Equal("arc-too-few-points", fewPoints.Code);
    }

    [Fact]
    public void A_scale_and_an_offset_change_the_radius_as_they_change_the_circle()
    {
        OutlineErrorSource[] sources = [new("scale", [LinearEffect.Scale(0.001)]), new("edge", [new NormalOffsetEffect(0.015)])];

        var radius = ArcRadius.OfRoof(AnalyticShapes.DSection(18, 8), sources).ValueOrThrow();

        Assert.Equal(0.018, radius.Budget.Rows[0].StandardUncertainty, 1e-5);
        Assert.Equal(0.015, radius.Budget.Rows[1].StandardUncertainty, 1e-5);
        Assert.Equal(Math.Sqrt((0.018 * 0.018) + (0.015 * 0.015)), radius.RadiusMm.StandardUncertainty, 1e-5);
    }

    [Fact]
    public void The_uncertainty_from_a_random_edge_is_the_spread_of_fits_to_noisy_outlines()
    {
        var circle = AnalyticShapes.Circle(18);
        OutlineErrorSource[] sources = [new("edge, random", [new RandomEdgeEffect(0.02, 0.1)])];
        var random = new Random(3);

        // Independent moves of corners 0.157 mm apart: the correlation length is their spacing.
        var radii = Enumerable.Range(0, 600).Select(_ => ArcRadius.OfFloor(
            Outline.From(circle.Points.ToArray().Select(p =>
            {
                var factor = 1 + (Normal.Sample(random, 0, 0.02) / 18);
                return new SectionPoint(p.XMm * factor, p.YMm * factor);
            })).ValueOrThrow(),
            []).ValueOrThrow().RadiusMm.Value).ToArray();
        var stated = ArcRadius.OfFloor(circle, sources).ValueOrThrow().RadiusMm.StandardUncertainty;

        // The standard deviation of 600 fits is known to 3 %.
        Assert.Equal(radii.StandardDeviation(), stated, 0.09 * stated);
    }
}
