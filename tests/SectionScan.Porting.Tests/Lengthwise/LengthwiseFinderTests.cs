using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Lengthwise;
using SectionScan.Testing.Shapes;
using SectionScan.Testing.Truth;

namespace SectionScan.Porting.Tests.Lengthwise;

public class LengthwiseFinderTests
{
    private const double HeightMm = 30;

    /// <summary>A drawn shape: 20 mm straight, an arc of known radius through 80°, 20 mm straight, 30 mm high.</summary>
    [Theory]
    [InlineData(12)]
    [InlineData(25)]
    [InlineData(40)]
    public void The_radius_of_the_turn_of_a_drawn_arc_is_found(double radius)
    {
        var shape = LengthwiseFinder.Find("drawn", Drawn(radius), [new("edge", [new RandomEdgeEffect(0.01, 1)])]).ValueOrThrow();

        // The 1 %; the drawn arc itself is a polygon of half degrees.
        Assert.Equal(1, shape.FloorRadius.ValueOrThrow().RadiusMm.Value / radius, 0.01);
        Assert.Equal(1, shape.RoofRadius.ValueOrThrow().RadiusMm.Value / (radius + HeightMm), 0.01);
        Assert.True(shape.FloorRadius.ValueOrThrow().RadiusMm.StandardUncertainty > 0);

        // In the middle of the turn the local radius is the same.
        var middle = shape.FloorRadii[shape.FloorRadii.Count / 2].Radius.RadiusMm.Value;
        Assert.Equal(1, middle / radius, 0.01);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(25)]
    public void The_centreline_of_a_drawn_strip_runs_midway_and_its_height_is_the_strips(double radius)
    {
        var shape = LengthwiseFinder.Find("drawn", Drawn(radius), []).ValueOrThrow();

        // 2 × 20 mm and the arc on the middle radius; steps of a millimetre cut corners by 0.02 mm.
        Assert.Equal(40 + ((radius + (HeightMm / 2)) * double.DegreesToRadians(80)), shape.LengthMm, 0.03);
        Assert.All(shape.Centreline, place => Assert.Equal(HeightMm, place.HeightMm, 0.02));
    }

    [Fact]
    public void The_floor_is_the_inside_of_the_turn_and_both_lines_run_from_the_face_to_the_seat()
    {
        var drawn = Drawn(25);

        var left = LengthwiseFinder.Find("drawn", drawn, []).ValueOrThrow();
        var right = LengthwiseFinder.Find("drawn", drawn, [], faceIsRight: true).ValueOrThrow();

        Assert.True(left.Floor.LengthMm < left.Roof.LengthMm);
        Assert.Equal(0, left.Face.Floor.DistanceTo(new(-20, 0)), 0.05);
        Assert.Equal(0, left.Face.Roof.DistanceTo(new(-20, HeightMm)), 0.05);
        Assert.Equal(0, right.Seat.Floor.DistanceTo(new(-20, 0)), 0.05);
        Assert.Equal(left.LengthMm, right.LengthMm, 0.02);
    }

    [Fact]
    public void In_a_straight_port_the_lower_wall_is_the_floor()
    {
        var shape = LengthwiseFinder.Find("straight", AnalyticShapes.Rectangle(80, 30), []).ValueOrThrow();

        Assert.Equal(-15, shape.Floor.At(40).YMm, 0.01);
        Assert.Equal(80, shape.LengthMm, 0.01);
        Assert.False(shape.FloorRadius.TryGet(out _, out var problem));
        Assert.Equal("arc-too-flat", problem.Code);
    }

    [Fact]
    public void The_true_outline_of_the_photo_gives_the_same_shape_whichever_way_it_is_written()
    {
        var truth = SamplePhotos.TruthOf("p09").Sections[0];

        var own = LengthwiseFinder.Find("p09", Outline.From(truth.Outline).ValueOrThrow(), []).ValueOrThrow();
        var turned = LengthwiseFinder.Find(
            "p09", Outline.From(truth.PlacedOutline.Skip(777).Concat(truth.PlacedOutline.Take(777)).Select(p => new SectionPoint(p.XMm, -p.YMm))).ValueOrThrow(), []).ValueOrThrow();

        Assert.Equal(own.LengthMm, turned.LengthMm, 0.05);
        Assert.Equal(1, own.FloorRadius.ValueOrThrow().RadiusMm.Value / turned.FloorRadius.ValueOrThrow().RadiusMm.Value, 0.005);
    }

    [Theory]
    [InlineData(true, "Only one end")]
    [InlineData(false, "Neither end")]
    public void Without_both_ends_there_is_one_clear_message(bool hasFace, string said)
    {
        // A lens with pointed or rounded ends; with a face, its left part is cut off straight.
        var outline = Outline.From(AnalyticShapes.Ellipse(60, 18).Points.ToArray().Where(p => !hasFace || p.XMm > -30)).ValueOrThrow();

        Assert.False(LengthwiseFinder.Find("half.jpg", outline, []).TryGet(out _, out var problem));
        Assert.Equal("lengthwise-ends-missing", problem.Code);
        Assert.StartsWith(said, problem.What, StringComparison.Ordinal);
        Assert.Equal("half.jpg", problem.Where);
    }

    [Fact]
    public void Straight_sides_that_are_no_two_ends_are_counted_truly()
    {
        // A triangle: three straight sides, each next to the other two.
        var outline = Outline.From([new(0, 0), new(60, 0), new(20, 45)]).ValueOrThrow();

        Assert.False(LengthwiseFinder.Find("half.jpg", outline, []).TryGet(out _, out var problem));
        Assert.StartsWith("Of its 3 straight sides no two lie at opposite ends", problem.What, StringComparison.Ordinal);
    }

    internal static Outline Drawn(double radius, double riseMm = 0)
    {
        var arc = Enumerable.Range(0, 161).Select(k => double.DegreesToRadians(k / 2.0)).ToList();
        IEnumerable<SectionPoint> Wall(double offset, double lift)
        {
            yield return new(-20, offset + lift);
            foreach (var t in arc)
            {
                yield return new((radius + offset + lift) * Math.Sin(t), -radius + ((radius + offset + lift) * Math.Cos(t)));
            }

            var (sin, cos) = Math.SinCos(double.DegreesToRadians(80));
            yield return new(((radius + offset + lift) * sin) + (20 * cos), -radius + ((radius + offset + lift) * cos) - (20 * sin));
        }

        return Outline.From(Wall(0, riseMm).Concat(Wall(HeightMm, 0).Reverse())).ValueOrThrow();
    }
}
