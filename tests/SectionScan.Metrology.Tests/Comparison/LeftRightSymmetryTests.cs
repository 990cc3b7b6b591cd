using SectionScan.Metrology.Comparison;
using SectionScan.Testing.Shapes;

namespace SectionScan.Metrology.Tests.Comparison;

public sealed class LeftRightSymmetryTests
{
    [Fact]
    public void A_D_section_is_its_own_mirror_image_wherever_it_lies()
    {
        var symmetry = LeftRightSymmetry.Of(AnalyticShapes.DSection(18, 8).Moved(40, -7));

        Assert.Equal(1, symmetry.IntersectionOverUnion, 1e-4);
        Assert.InRange(symmetry.LargestDeviationMm, 0, 0.002);
        Assert.InRange(symmetry.MeanDeviationMm, 0, 0.001);
    }

    [Fact]
    public void A_right_triangle_shares_the_hand_worked_part_with_its_mirror_image()
    {
        // (0,0), (3,0), (0,3): centroid at x = 1, mirror image (2,0), (−1,0), (2,3). Shared: 0 ≤ x ≤ 2 under both y = 3 − x and
        // y = 1 + x, area 2·(1 + 2)/2·1 = 3 of 4.5; union 6.
        var symmetry = LeftRightSymmetry.Of(AnalyticShapes.Polygon((0, 0), (3, 0), (0, 3)));

        Assert.Equal(0.5, symmetry.IntersectionOverUnion, 1e-12);
        // The apex (0, 3) is √2 from the mirrored hypotenuse y = 1 + x: |0 − 3 + 1|/√2.
        Assert.Equal(Math.Sqrt(2), symmetry.LargestDeviationMm, 1e-5);
    }
}
