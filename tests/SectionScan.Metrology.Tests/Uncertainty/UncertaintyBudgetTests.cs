using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Metrology.Tests.Uncertainty;

public sealed class UncertaintyBudgetTests
{
    [Fact]
    public void The_end_gauge_of_the_guide_has_its_published_combined_uncertainty()
    {
        // JCGM 100:2008, H.1: 25 nm (calibration of the standard), 9.7 nm (difference: 5.8, 3.9, 6.7), 2.9 nm (difference of the
        // expansion coefficients), 16.6 nm (difference of the temperatures); u_c = 32 nm, 31.67 unrounded.
        var difference = new UncertaintyBudget([new("repeated readings", 5.8), new("random of comparator", 3.9), new("systematic of comparator", 6.7)]);
        var budget = new UncertaintyBudget([
            new("standard", 25), new("difference", difference.CombinedStandardUncertainty), new("expansion", 2.887), new("temperature", 16.599)]);

        Assert.Equal(9.7, difference.CombinedStandardUncertainty, 0.05);
        Assert.Equal(31.67, budget.CombinedStandardUncertainty, 0.05);
    }

    [Fact]
    public void A_budget_without_rows_adds_up_to_nothing() =>
        Assert.Equal(0, new UncertaintyBudget([]).CombinedStandardUncertainty);
}
