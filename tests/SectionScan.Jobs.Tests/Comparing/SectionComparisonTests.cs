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
