namespace SectionScan.Metrology.Uncertainty;

/// <summary>The named contributions to the uncertainty of one measure; independent of one another, so that they add in squares
/// (JCGM 100:2008, 5.1.2).</summary>
/// <param name="Rows">The contributions, in the measure's unit.</param>
public sealed record UncertaintyBudget(IReadOnlyList<BudgetRow> Rows)
{
    /// <summary>u of the measure: the root of the sum of squares, in the measure's unit.</summary>
    public double CombinedStandardUncertainty => Math.Sqrt(Rows.Sum(row => row.StandardUncertainty * row.StandardUncertainty));
}
