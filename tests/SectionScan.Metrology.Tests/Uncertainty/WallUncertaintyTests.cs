using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Uncertainty;

public class WallUncertaintyTests
{
    // The circle is a polygon of 720 corners, off the circle by 1e-5 of the radius.
    private const double RadiusMm = 20;
    private const double PolygonTolerance = 1e-4;

    private static readonly Outline Circle = AnalyticShapes.Circle(RadiusMm);

    [Fact]
    public void Without_causes_of_error_there_is_no_uncertainty() => Assert.Equal(0, WallUncertainty.Of(Circle, []));

    [Fact]
    public void An_offset_of_the_edge_moves_every_wall_by_itself() =>
        Assert.Equal(0.03, Of(new NormalOffsetEffect(-0.03)), PolygonTolerance);

    [Fact]
    public void A_scale_moves_a_circle_by_its_share_of_the_radius() =>
        Assert.Equal(0.001 * RadiusMm, Of(LinearEffect.Scale(0.001)), PolygonTolerance);

    [Fact]
    public void A_stretch_along_x_moves_a_circle_by_the_mean_of_the_fourth_power_of_the_cosine() =>
        // Normal move R·s·cos²; mean of cos⁴ over a turn is 3/8.
        Assert.Equal(0.001 * RadiusMm * Math.Sqrt(3.0 / 8), Of(new LinearEffect(0.001, 0, 0, 0)), PolygonTolerance);

    [Fact]
    public void A_turn_moves_no_wall_of_a_circle() => Assert.Equal(0, Of(new LinearEffect(0, -0.01, 0.01, 0)), PolygonTolerance);

    [Fact]
    public void A_leaning_wall_counts_where_it_faces() =>
        // Move 0.04·max(0, cos); mean of cos² over the half that faces is 1/4 of the whole.
        Assert.Equal(0.04 * Math.Sqrt(0.25), Of(new FacingOffsetEffect(0.04, 1, 0)), PolygonTolerance);

    [Fact]
    public void Independent_causes_add_in_squares() =>
        Assert.Equal(0.05, Of(new NormalOffsetEffect(0.03), new RandomEdgeEffect(0.04, 0.6)), PolygonTolerance);

    private static double Of(params OutlineEffect[] effects) =>
        WallUncertainty.Of(Circle, [.. effects.Select(effect => new OutlineErrorSource("cause", [effect]))]);
}
