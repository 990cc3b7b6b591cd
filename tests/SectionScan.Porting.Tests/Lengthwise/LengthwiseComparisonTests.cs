using SectionScan.Metrology.Frames;
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
        Assert.Equal(0.01414, comparison.UsualStandardUncertaintyMm, 1e-4);
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
        Assert.True(double.IsNaN(comparison.UsualStandardUncertaintyMm));
    }

    [Fact]
    public void A_doubtful_stretch_counts_where_it_lies_and_nowhere_else()
    {
        // The floor is doubtful by 0.5 mm within 4 mm of the middle of its turn, the whole edge by 0.01 mm.
        var place = new SectionPoint(25 * Math.Sin(double.DegreesToRadians(40)), -25 + (25 * Math.Cos(double.DegreesToRadians(40))));
        var shape = LengthwiseFinder.Find(
            "drawn", LengthwiseFinderTests.Drawn(25), [.. Edge, new("edge, faint stretches", [new LocalOffsetEffect(0.5, place.XMm, place.YMm, 4)])]).ValueOrThrow();

        var u = new LengthwiseUncertainty(shape);

        var nearest = shape.Centreline.MinBy(at => at.Place.DistanceTo(place))!;
        Assert.InRange(u.Height(nearest).StandardUncertainty, 0.45, 0.55);

        // Both walls move by 0.01 mm together.
        Assert.Equal(0.02, u.Height(shape.Face).StandardUncertainty, 1e-3);
        Assert.Equal(0.01, u.RoofMm(place), 1e-3);
    }
}
