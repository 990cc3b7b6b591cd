using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Uncertainty;

/// <summary>Worked by hand after JCGM 100:2008, 5.1.2 and 5.2.2: errors that are shared add before they are squared.</summary>
public class WallMovesTests
{
    [Fact]
    public void A_shared_move_counts_twice_between_two_walls_and_a_random_one_by_the_root_of_two()
    {
        var circle = AnalyticShapes.Circle(20, 400);

        var shared = new WallMoves(circle, [new("edge", [new NormalOffsetEffect(0.03)])]);
        var random = new WallMoves(circle, [new("noise", [new RandomEdgeEffect(0.03, 0.5)])]);

        Assert.Equal(0.03, shared.At(0), 1e-5);
        Assert.Equal(0.06, shared.Across(0, 200), 2e-5);
        Assert.Equal(0.03, random.At(0), 1e-9);
        Assert.Equal(0.03 * Math.Sqrt(2), random.Across(0, 200), 1e-9);
    }

    [Fact]
    public void A_wider_scale_moves_a_wall_by_its_distance_from_the_middle()
    {
        // 0.1 % of 20 mm; between the walls 0.1 % of 40 mm.
        var moves = new WallMoves(AnalyticShapes.Circle(20, 400), [new("scale", [LinearEffect.Scale(0.001)])]);

        Assert.Equal(0.02, moves.At(50), 1e-5);
        Assert.Equal(0.04, moves.Across(0, 200), 1e-5);
    }
}
