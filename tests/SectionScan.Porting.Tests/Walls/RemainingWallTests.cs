using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Walls;
using SectionScan.Testing.Sections;

namespace SectionScan.Porting.Tests.Walls;

/// <summary>A round port of 20 mm beside a drilled passage of 4 mm radius, 17 mm away: a wall of 3 mm.</summary>
public class RemainingWallTests
{
    private const double PolygonMm = 0.0002;
    private static readonly Outline Port = SampleSections.Ellipse(20, 20, 720);
    private static readonly OutlineErrorSource[] Edge = [new("edge", [new NormalOffsetEffect(0.02)])];

    [Fact]
    public void Rows_of_the_budget_add_in_squares_and_assumptions_say_so()
    {
        var wall = Of(WallStage.Target, KeepOutSource.Drawing);

        Assert.Equal(3, wall.WallMm.Value, PolygonMm);
        Assert.Equal(OutlineRegion.Right, wall.Region);
        Assert.Equal(
            ["place of drain", "present outline: edge", "core shift (assumed)", "registration (assumed)", "handwork to the template (assumed)"],
            wall.Budget.Rows.Select(row => row.Source));

        // JCGM 100:2008, 4.3.7 (half-width over √3) and 5.1.2 (sum of squares).
        var square = (0.2 * 0.2) + (0.02 * 0.02) + (((0.5 * 0.5) + (0.3 * 0.3) + (0.25 * 0.25)) / 3);
        Assert.Equal(Math.Sqrt(square), wall.WallMm.StandardUncertainty, 1e-6);
    }

    [Theory]
    [InlineData(WallStage.Present, KeepOutSource.Caliper, "caliper")]
    [InlineData(WallStage.Present, KeepOutSource.Measured, "place of drain|present outline: edge")]
    [InlineData(WallStage.Finished, KeepOutSource.Measured, "place of drain|finished outline: edge|registration (assumed)")]
    [InlineData(WallStage.Finished, KeepOutSource.Caliper, "caliper|finished outline: edge|present outline: edge|registration (assumed)")]
    [InlineData(WallStage.Target, KeepOutSource.Caliper, "caliper|present outline: edge|registration (assumed)|handwork to the template (assumed)")]
    public void What_was_measured_needs_no_assumption(WallStage stage, KeepOutSource source, string rows) =>
        Assert.Equal(rows.Split('|'), Of(stage, source).Budget.Rows.Select(row => row.Source));

    [Theory]
    [InlineData(2.5)]
    [InlineData(3)]
    [InlineData(3.4)]
    public void The_chance_is_what_a_drawing_of_lots_finds(double limitMm)
    {
        var wall = Of(WallStage.Target, KeepOutSource.Drawing, limitMm);

        // JCGM 101:2008: the passage, the port and its wall are moved at random and the wall is measured anew. Far from a normal error in
        // the rows with half-widths, and the thinnest place wanders: the two agree to 0.02.
        var random = new Random(5);
        double Uniform(double half) => half * ((2 * random.NextDouble()) - 1);
        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var under = 0;
        const int Lots = 200_000;
        for (var lot = 0; lot < Lots; lot++)
        {
            var x = 17 + (0.2 * Gauss()) + Uniform(0.5) + Uniform(0.3);
            var y = (0.2 * Gauss()) + Uniform(0.5) + Uniform(0.3);
            var radius = 10 + (0.02 * Gauss()) + Uniform(0.25);
            under += double.Hypot(x, y) - 4 - radius < limitMm ? 1 : 0;
        }

        Assert.Equal((double)under / Lots, wall.ChanceUnderLimit, 0.02);
        Assert.Equal(wall.ChanceUnderLimit > 0.05, wall.NeedsCaution);
    }

    [Fact]
    public void A_wall_that_leans_is_thinner_by_the_cosine()
    {
        var wall = RemainingWall.Of(
            Port, WallStage.Present, Drain(KeepOutSource.Measured, 2.5), Port, Edge, Edge, WallAssumptions.Usual with { LeanDeg = 30 });

        // cos 30° = 0.866025.
        Assert.Equal(3 * 0.866025, wall.WallMm.Value, 0.001);
    }

    [Fact]
    public void A_local_doubt_counts_only_where_it_is()
    {
        OutlineErrorSource[] doubt = [new("faint edge", [new LocalOffsetEffect(0.3, 10, 0, 3)])];

        Assert.Equal(0.3, WallUncertainty.At(Port, doubt, new(10, 0)).Single().StandardUncertainty, 0.001);
        Assert.Equal(0, WallUncertainty.At(Port, doubt, new(-10, 0)).Single().StandardUncertainty);
    }

    [Fact]
    public void A_scale_error_moves_the_wall_by_its_distance_from_the_middle() =>
        Assert.Equal(
            0.01, WallUncertainty.At(Port, [new("print scale", [LinearEffect.Scale(0.001)])], new(0, 10)).Single().StandardUncertainty, 1e-6);

    private static RemainingWall Of(WallStage stage, KeepOutSource source, double limitMm = 2.5) =>
        RemainingWall.Of(Port, stage, Drain(source, limitMm), Port, Edge, Edge, WallAssumptions.Usual);

    private static KeepOut Drain(KeepOutSource source, double limitMm) =>
        new("drain", new KeepOutCircle(new SectionPoint(17, 0), 4), 0.2, limitMm, source, string.Empty);
}
