namespace SectionScan.Metrology.Uncertainty;

/// <summary>One contribution to the uncertainty of a measure.</summary>
/// <param name="Source">What it comes from, in words: "print scale", "slice thickness".</param>
/// <param name="StandardUncertainty">Its standard uncertainty in the measure's own unit.</param>
public sealed record BudgetRow(string Source, double StandardUncertainty);
