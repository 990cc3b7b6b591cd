using System.Globalization;
using SectionScan.Jobs.Comparing;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Sections;

namespace SectionScan.Jobs.Tests.Comparing;

/// <summary>Circles of radius 20 and 20.5 mm, centred on each other: the wall has moved outward by 0.5 mm everywhere.</summary>
public class SectionComparisonTests
{
    private static readonly SectionInput Before = new("as cast", SampleSections.Ellipse(40, 40), [new("edge", [new NormalOffsetEffect(0.015)])]);
    private static readonly SectionInput After = new("finished", SampleSections.Ellipse(41, 41), [new("edge", [new NormalOffsetEffect(0.02)])]);
    private static readonly ComparisonOptions AsPlaced = new() { Alignment = AlignmentMethod.AsPlaced };

    [Fact]
    public void Metal_that_is_gone_counts_as_plus()
    {
        var result = SectionComparison.Of(Before, After, AsPlaced).Result;

        Assert.Equal(0.5, result.MeanDeviationMm, 0.002);
        Assert.Equal(Math.PI * ((20.5 * 20.5) - (20 * 20)), result.AreaDifferenceMm2, 0.05);
        Assert.Equal(-0.5, SectionComparison.Of(After, Before, AsPlaced).Result.MeanDeviationMm, 0.002);
    }

    // JCGM 100:2008, 5.1.2: uncorrelated components add in squares; 0.015 and 0.020 give 0.025.
    [Fact]
    public void The_two_walls_uncertainties_add_in_squares()
    {
        var comparison = SectionComparison.Of(Before, After, AsPlaced);

        Assert.Equal(0.025, comparison.DeviationStandardUncertaintyMm, 1e-5);
        Assert.Equal(0.05, comparison.DeviationExpandedUncertaintyMm, 1e-5);
        Assert.False(comparison.IsWithinUncertainty);
        Assert.True(SectionComparison.Of(Before, Before, AsPlaced).IsWithinUncertainty);
    }

    // π·(20.5² − 20²); widths 41 − 40. u after JCGM 100:2008, 5.1.2: a wall moved by u moves the width by 2u, so u of the difference is
    // 2·√(0.015² + 0.020²) = 0.05.
    [Fact]
    public void Area_width_and_height_differ_with_both_uncertainties_in_squares()
    {
        var measures = SectionComparison.Of(Before, After, AsPlaced).Measures;

        Assert.Equal(["area", "width", "height"], measures.Select(each => each.Measure.Name));
        Assert.Equal(Math.PI * ((20.5 * 20.5) - (20 * 20)), measures[0].Difference.Value, 0.05);
        Assert.Equal(1, measures[1].Difference.Value, 0.001);
        Assert.Equal(0.05, measures[1].Difference.StandardUncertainty, 0.001);
        Assert.True(measures[2].IsErrorKnown);
        Assert.False(SectionComparison.Of(Before, After with { ErrorSources = [] }, AsPlaced).Measures[0].IsErrorKnown);
    }

    [Fact]
    public void A_move_by_hand_shifts_the_deviations_and_is_told_in_the_drawing_and_the_answer()
    {
        var moved = SectionComparison.Of(Before, After, AsPlaced).MovedByHand(new(0.3, 0, 0));

        // A circle larger by 0.5 mm, moved right by 0.3: 0.8 gone on the right, 0.2 on the left.
        Assert.Equal(0.8, moved.Result.Highest.DeviationMm, 0.005);
        Assert.Equal(0.2, moved.Result.Lowest.DeviationMm, 0.005);
        Assert.Equal(OutlineRegion.Right, moved.Result.Highest.Region);
        Assert.Contains("aligned by hand: x +0.30 mm, y 0.00 mm, turned 0.00°", AlignmentWords.Of(moved.Alignment), StringComparison.Ordinal);
        Assert.Equal(new(0.3, 0, 0), ComparisonAnswer.Of(moved, "as-placed").ByHand);
        Assert.Null(ComparisonAnswer.Of(SectionComparison.Of(Before, After, AsPlaced), "as-placed").ByHand);
        Assert.Throws<InvalidOperationException>(() => moved.MovedByHand(new(0, 0, 1)));
    }

    [Fact]
    public void A_hand_that_places_a_section_widens_the_uncertainty_of_its_deviations()
    {
        var laid = SectionComparison.Of(Before, After, AsPlaced);
        var moved = laid.MovedByHand(new(0.3, 0, 0));
        var asked = SectionComparison.With(Before, After, AlignmentChoice.AsPlaced with { ByHand = new(0.3, 0, 0) }).ValueOrThrow();

        // 0.1 mm to either side, rectangular: 0.1/√3 (JCGM 100:2008, 4.3.7); the turn of a circle moves none of its walls.
        Assert.Equal(double.Hypot(laid.DeviationStandardUncertaintyMm, 0.1 / Math.Sqrt(3)), moved.DeviationStandardUncertaintyMm, 0.0005);
        Assert.Equal(moved.DeviationStandardUncertaintyMm, asked.DeviationStandardUncertaintyMm, 1e-12);
        Assert.Equal(2 * moved.DeviationStandardUncertaintyMm, ComparisonAnswer.Of(moved, "as-placed").Deviation.ExpandedUncertaintyMm!.Value, 1e-12);
        Assert.True(double.IsNaN(SectionComparison.Of(Before, After with { ErrorSources = [] }, AsPlaced).MovedByHand(new(0.3, 0, 0)).DeviationStandardUncertaintyMm));
    }

    [Fact]
    public void A_bare_outline_has_no_known_uncertainty_and_the_answer_says_so()
    {
        var comparison = SectionComparison.Of(Before, After with { ErrorSources = [] }, AsPlaced);

        Assert.True(double.IsNaN(comparison.DeviationStandardUncertaintyMm));
        Assert.Null(ComparisonAnswer.Of(comparison, "as-placed").Deviation.ExpandedUncertaintyMm);
    }

    [Fact]
    public void The_table_holds_every_deviation_in_the_invariant_culture()
    {
        var comparison = SectionComparison.Of(Before, After, AsPlaced);

        var lines = comparison.ToCsv().Split('\n', StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal("x_mm,y_mm,direction_deg,region,deviation_mm", lines[0]);
        Assert.Equal(comparison.Result.Samples.Count, lines.Length - 1);
        Assert.All(lines.Skip(1), line => Assert.Equal(0.5, double.Parse(line.Split(',')[4], CultureInfo.InvariantCulture), 0.01));
    }
}
