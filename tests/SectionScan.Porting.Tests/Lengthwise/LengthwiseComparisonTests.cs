using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Lengthwise;

namespace SectionScan.Porting.Tests.Lengthwise;

public class LengthwiseComparisonTests
{
    private static readonly OutlineErrorSource[] Edge = [new("edge", [new NormalOffsetEffect(0.01)])];

    [Theory]
    [InlineData(LengthwiseAlignment.Seat)]
    [InlineData(LengthwiseAlignment.Face)]
    [InlineData(LengthwiseAlignment.Both)]
    public void A_shape_laid_elsewhere_is_brought_back_on_the_reference(LengthwiseAlignment alignment)
    {
        var drawn = LengthwiseFinderTests.Drawn(25);
        var reference = LengthwiseFinder.Find("reference", drawn, Edge).ValueOrThrow();
        var measured = LengthwiseFinder.Find("measured", drawn.Turned(Angle.FromDegrees(7)).Moved(12, -5), Edge).ValueOrThrow();

        var comparison = LengthwiseComparison.Of(reference, measured, alignment);

        Assert.Equal(-7, comparison.Transform.Turn.Degrees, 0.05);
        Assert.All(comparison.Floor.Concat(comparison.Roof), sample => Assert.Equal(0, sample.DeviationMm, 0.05));

        // Two walls of u 0.01.
        Assert.Equal(0.01414, comparison.DeviationStandardUncertaintyMm, 1e-4);
    }

    [Fact]
    public void A_floor_that_was_raised_rises_and_counts_as_metal_left()
    {
        // A floor 0.6 mm nearer the roof all along; ends are laid on each other by their middles, which takes half of it away.
        var reference = LengthwiseFinder.Find("reference", LengthwiseFinderTests.Drawn(25), []).ValueOrThrow();
        var measured = LengthwiseFinder.Find("measured", LengthwiseFinderTests.Drawn(25, riseMm: 0.6), []).ValueOrThrow();

        var comparison = LengthwiseComparison.Of(reference, measured, LengthwiseAlignment.Both);

        Assert.InRange(comparison.MeanFloorRiseMm, 0.2, 0.65);
        Assert.True(comparison.Floor.Average(sample => sample.DeviationMm) < 0);
        Assert.Equal(-comparison.HighestFloor.DeviationMm, comparison.Floor.Max(sample => -sample.DeviationMm));
        Assert.True(double.IsNaN(comparison.DeviationStandardUncertaintyMm));
    }
}
