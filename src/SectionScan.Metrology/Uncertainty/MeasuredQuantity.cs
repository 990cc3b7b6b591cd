using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>One measure of one outline with its uncertainty and where that comes from.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="Estimate">The value with its standard uncertainty, in the measure's unit; the latter is zero when nothing is known
/// of the outline's error.</param>
/// <param name="Budget">The contributions, which add up to the standard uncertainty.</param>
public sealed record MeasuredQuantity(Measure Measure, Estimate Estimate, UncertaintyBudget Budget)
{
    /// <summary>True when at least one cause of error was given; false: the uncertainty is unknown, not zero.</summary>
    public bool IsUncertaintyKnown => Budget.Rows.Count > 0;
}
