using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Tests.Comparison;

public sealed class OutlineRegionsTests
{
    [Theory]
    [InlineData(0, OutlineRegion.Right)]
    [InlineData(22, OutlineRegion.Right)]
    [InlineData(-22, OutlineRegion.Right)]
    [InlineData(23, OutlineRegion.RoofRightCorner)]
    [InlineData(90, OutlineRegion.Roof)]
    [InlineData(135, OutlineRegion.RoofLeftCorner)]
    [InlineData(180, OutlineRegion.Left)]
    [InlineData(-180, OutlineRegion.Left)]
    [InlineData(-135, OutlineRegion.FloorLeftCorner)]
    [InlineData(-90, OutlineRegion.Floor)]
    [InlineData(-45, OutlineRegion.FloorRightCorner)]
    [InlineData(-23, OutlineRegion.FloorRightCorner)]
    [InlineData(720 + 90, OutlineRegion.Roof)]
    public void A_direction_lies_in_the_sector_of_45_degrees_about_its_name(double degrees, OutlineRegion region) =>
        Assert.Equal(region, OutlineRegions.In(Angle.FromDegrees(degrees)));

    [Fact]
    public void A_place_is_seen_from_the_centroid() =>
        Assert.Equal(135, OutlineRegions.DirectionOf(new(-1, 5), new(1, 3)).Degrees, 1e-12);
}
