using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.TargetShapes;
using SectionScan.Porting.Walls;
using SectionScan.Testing.Shapes;

namespace SectionScan.Porting.Tests.TargetShapes;

/// <summary>Mostly a circle of radius 20 mm toward one of 22 mm: 2 mm to cut everywhere.</summary>
public class TargetShapingTests
{
    private static readonly Outline Own = AnalyticShapes.Circle(20);
    private static readonly Outline Reference = AnalyticShapes.Circle(22);

    [Theory]
    [InlineData(0, 20)]
    [InlineData(0.6, 21.2)]
    [InlineData(1, 22)]
    [InlineData(1.25, 22.5)]
    public void A_share_lies_that_far_between_the_two(double share, double radiusMm)
    {
        var target = Shape(new(Own, Reference, SectorShares.Even(share)));

        Assert.Equal(Math.PI * radiusMm * radiusMm, Area(target.Outline), 0.05);
        Assert.All(target.Outline.Points.ToArray(), p => Assert.Equal(radiusMm, Math.Sqrt((p.XMm * p.XMm) + (p.YMm * p.YMm)), 2e-3));
    }

    // Steiner 1840, A + P·d + π·d²: the ellipse 20, 14 offset by 1/32 in has 967.070376676 mm² (field guide 3.5).
    [Fact]
    public void The_whole_way_to_a_parallel_wall_has_steiners_area()
    {
        const double OffsetMm = 0.79375;
        var own = AnalyticShapes.Ellipse(20, 14);
        var parallel = Outline.From(own.ToPolygon().Buffer(OffsetMm, 64).Coordinates.Select(c => new SectionPoint(c.X, c.Y))).ValueOrThrow();

        var target = Shape(new(own, parallel, SectorShares.Even(1)));

        Assert.Equal(967.070376676, Area(target.Outline), 0.05);
    }

    [Fact]
    public void Each_sector_gets_its_own_share_and_the_floor_stays_untouched()
    {
        var shares = SectorShares.Even(0.6).With(OutlineRegion.Floor, 0).With(OutlineRegion.Roof, 1);

        var target = Shape(new(Own, Reference, shares));

        Assert.Equal(21.2, RadiusAt(target.Outline, 0), 0.01);
        Assert.Equal(21.2, RadiusAt(target.Outline, 180), 0.01);
        Assert.Equal(22, RadiusAt(target.Outline, 90), 0.03);
        Assert.Equal(20, RadiusAt(target.Outline, -90), 0.001);
        Assert.Equal(20.6, RadiusAt(target.Outline, -67.5), 0.03);
    }

    [Fact]
    public void Metal_is_never_put_back()
    {
        var target = Shape(new(Own, AnalyticShapes.Ellipse(22, 19), SectorShares.Even(1)));

        Assert.Equal(20, RadiusAt(target.Outline, 90), 0.001);
        Assert.Equal(22, RadiusAt(target.Outline, 0), 0.02);
        var own = Assert.Single(target.Limits);
        Assert.Equal("own metal", own.Kind);
        Assert.Contains(own.Stretches, stretch => stretch.Sectors.Contains("roof", StringComparison.Ordinal) && Math.Abs(stretch.HeldBackMm - 1) < 0.02);
    }

    [Fact]
    public void A_limit_of_width_holds_and_tells_where_and_why()
    {
        var limit = new ShapeLimit(LimitedMeasure.Width, 43, "wider meant relocating the oil drain");

        var target = Shape(new(Own, Reference, SectorShares.Even(1)) { Limits = [limit] });

        Assert.InRange(Width(target.Outline), 42.9, 43.0001);
        Assert.Equal(22, RadiusAt(target.Outline, 90), 0.01);
        var held = Assert.Single(target.Limits);
        Assert.Equal(limit.Note, held.Note);
        Assert.Equal(44, held.Wanted, 0.01);
        Assert.Equal(2, held.Stretches.Count);
        Assert.All(held.Stretches, stretch => Assert.Equal(0.5, stretch.HeldBackMm, 0.02));
        Assert.Contains(held.Stretches, stretch => stretch.Sectors.Contains("right wall", StringComparison.Ordinal));
        Assert.Contains(held.Stretches, stretch => stretch.Sectors.Contains("left wall", StringComparison.Ordinal));
    }

    [Fact]
    public void A_limit_that_is_not_reached_changes_nothing()
    {
        var target = Shape(new(Own, Reference, SectorShares.Even(1)) { Limits = [new(LimitedMeasure.Height, 60, string.Empty), new(LimitedMeasure.Area, 9000, string.Empty)] });

        Assert.Equal(Math.PI * 22 * 22, Area(target.Outline), 0.05);
        Assert.All(target.Limits, limit => Assert.False(limit.IsActive));
    }

    [Fact]
    public void A_limit_of_area_draws_every_cut_back_alike()
    {
        var target = Shape(new(Own, Reference, SectorShares.Even(1)) { Limits = [new(LimitedMeasure.Area, Math.PI * 21 * 21, "speed")] });

        Assert.InRange(Area(target.Outline), (Math.PI * 21 * 21) - 0.5, Math.PI * 21 * 21);
        Assert.Equal(21, RadiusAt(target.Outline, 33), 0.01);
        Assert.True(Assert.Single(target.Limits).IsActive);
    }

    // A hole of radius 3 mm, its middle 25.5 mm to the right: the own wall leaves 2.5 mm, the reference would leave 0.5 mm.
    [Fact]
    public void The_wall_to_a_passage_keeps_its_thickness()
    {
        var clearance = new Clearance("oil drain", new KeepOutCircle(new(25.5, 0), 3), 2, "drilled");

        var target = Shape(new(Own, Reference, SectorShares.Even(1)) { Clearances = [clearance] });

        Assert.InRange(target.Outline.Points.ToArray().Min(clearance.Shape.DistanceMm), 2 - 0.001, 2.1);
        Assert.Equal(22, RadiusAt(target.Outline, 180), 0.01);
        var held = Assert.Single(target.Limits);
        Assert.Equal(0.5, held.Wanted, 0.01);
        Assert.Equal(1.5, Assert.Single(held.Stretches).HeldBackMm, 0.1);
    }

    [Fact]
    public void Where_the_wall_is_too_thin_already_nothing_is_cut()
    {
        var clearance = new Clearance("oil drain", new KeepOutCircle(new(25.5, 0), 3), 2.8, string.Empty);

        var target = Shape(new(Own, Reference, SectorShares.Even(1)) { Clearances = [clearance] });

        Assert.Equal(20, RadiusAt(target.Outline, 0), 0.001);
    }

    [Theory]
    [InlineData(LimitedMeasure.Area, 1450)]
    [InlineData(LimitedMeasure.Width, 43.2)]
    public void The_reference_is_scaled_until_the_target_measures_what_is_wanted(LimitedMeasure kind, double value)
    {
        var target = Shape(new(Own, Reference, SectorShares.Even(0.7)) { Wanted = (kind, value) });

        Assert.Equal(value, kind == LimitedMeasure.Area ? Area(target.Outline) : Width(target.Outline), 0.001 * value);
        Assert.Null(target.Missed);
    }

    [Fact]
    public void A_wish_beyond_a_limit_is_missed_and_told()
    {
        var target = Shape(new(Own, Reference, SectorShares.Even(1))
        {
            Wanted = (LimitedMeasure.Width, 46),
            Limits = [new(LimitedMeasure.Width, 43, string.Empty)],
        });

        Assert.Equal(43, target.Missed!.Value, 0.05);
    }

    // The valve's diameter squared goes with the area: 22 · 40/38.
    [Fact]
    public void A_larger_valve_scales_the_reference()
    {
        var target = Shape(new(Own, Reference, SectorShares.Even(1)) { ReferenceScale = 40.0 / 38 });

        Assert.Equal(22 * 40.0 / 38, RadiusAt(target.Outline, 45), 0.01);
    }

    [Fact]
    public void Beside_the_guide_the_port_gets_wider_by_what_was_asked()
    {
        var target = Shape(new(Own, Own, SectorShares.Even(1)) { Widening = new(2, 5, 10) });

        var at = target.Outline.Points.ToArray().Where(p => Math.Abs(p.YMm - 5) < 0.2).ToList();

        // A wall that leans by 14.5° to the side at that height moves out along its normal by cos² of it: 0.94 mm a side and a little faired.
        Assert.Equal((2 * Math.Sqrt(400 - 25)) + 1.94, at.Max(p => p.XMm) - at.Min(p => p.XMm), 0.12);
        Assert.Equal(20, RadiusAt(target.Outline, -60), 0.001);
        Assert.Equal(20, RadiusAt(target.Outline, 90), 0.001);
    }

    [Fact]
    public void Fairing_takes_waves_out_of_the_curvature_and_moves_the_wall_little()
    {
        // Marks of a burr on the reference: 0.05 mm, 4 mm long.
        var rough = Outline.From(Enumerable.Range(0, 1440).Select(i =>
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / 1440);
            var radius = 22 + (0.05 * Math.Sin(34 * 2 * Math.PI * i / 1440));
            return new SectionPoint(radius * cos, radius * 0.9 * sin);
        })).ValueOrThrow();
        var own = AnalyticShapes.Ellipse(20, 18);

        var plain = Shape(new(own, rough, SectorShares.Even(1)) { FairingMm = 0 });
        var fair = Shape(new(own, rough, SectorShares.Even(1)));

        // An ellipse has four places of greatest and least curvature (the four vertex theorem's least number).
        Assert.InRange(Turns(plain.Outline), 60, 80);
        Assert.InRange(Turns(fair.Outline), 4, 6);
        Assert.InRange(fair.LargestFairingMm, 0.03, 0.07);
    }

    [Fact]
    public void A_limit_leaves_no_kink()
    {
        var target = Shape(new(Own, Reference, SectorShares.Even(1)) { Limits = [new(LimitedMeasure.Width, 43, string.Empty)] });

        // Cut square, the corner between circle and limit turns by about 12° at one point, which is 1.7 per mm at points 0.125 mm apart.
        Assert.InRange(Curvatures(target.Outline).Max(), 0.04, 0.2);
    }

    [Fact]
    public void The_share_goes_over_smoothly_from_sector_to_sector()
    {
        var shares = SectorShares.Even(0).With(OutlineRegion.Right, 1);

        Assert.Equal(1, shares.At(default), 1e-12);
        Assert.Equal(0.5, shares.At(Angle.FromDegrees(22.5)), 1e-12);
        Assert.Equal(0.5, shares.At(Angle.FromDegrees(-22.5)), 1e-12);
        Assert.Equal(0, shares.At(Angle.FromDegrees(45)), 1e-12);
        Assert.Equal(0, shares.At(Angle.FromDegrees(180)), 1e-12);
    }

    private static TargetShape Shape(TargetShapeOrder order) => TargetShaping.Shape(order).ValueOrThrow();

    private static double Area(Outline outline) => PolygonMoments.SignedAreaMm2(outline.Points);

    private static double Width(Outline outline) => MeasureCatalogue.Width.Definition(PolygonFacts.Of(outline));

    private static double RadiusAt(Outline outline, double degrees)
    {
        var nearest = outline.Points.ToArray().MinBy(p => Math.Abs(Math.IEEERemainder(double.RadiansToDegrees(Math.Atan2(p.YMm, p.XMm)) - degrees, 360)));
        return Math.Sqrt((nearest.XMm * nearest.XMm) + (nearest.YMm * nearest.YMm));
    }

    /// <summary>Menger curvature over 1 mm to each side: four times the triangle's area over its sides.</summary>
    private static double[] Curvatures(Outline outline)
    {
        const int Places = 256;
        var even = outline.Resampled(Places);
        var apart = (int)Math.Round(1 / even[0].DistanceTo(even[1]));
        return [.. Enumerable.Range(0, Places).Select(i =>
        {
            var (a, b, c) = (even[(i + Places - apart) % Places], even[i], even[(i + apart) % Places]);
            var twice = ((b.XMm - a.XMm) * (c.YMm - a.YMm)) - ((b.YMm - a.YMm) * (c.XMm - a.XMm));
            return 2 * twice / (a.DistanceTo(b) * b.DistanceTo(c) * c.DistanceTo(a));
        })];
    }

    /// <summary>How often the curvature turns from rising to falling or back, by more than a twentieth of its mean.</summary>
    private static int Turns(Outline outline)
    {
        var curvatures = Curvatures(outline);
        var noticeable = 0.05 * curvatures.Average();
        var (turns, direction, last) = (0, 0, curvatures[0]);
        for (var k = 1; k <= 2 * curvatures.Length; k++)
        {
            var value = curvatures[k % curvatures.Length];
            var change = value - last;
            if ((direction >= 0 && change < -noticeable) || (direction <= 0 && change > noticeable))
            {
                // The first time round only finds the direction.
                turns += k > curvatures.Length ? 1 : 0;
                (direction, last) = (Math.Sign(change), value);
            }
            else if (Math.Sign(change) == direction)
            {
                last = value;
            }
        }

        return turns;
    }
}
