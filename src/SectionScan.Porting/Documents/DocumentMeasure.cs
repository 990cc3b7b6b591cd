using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Documents;

/// <summary>A measure as it is written into a document beside the outline, for people and other programs. Never read back as a
/// fact: the outline and its error sources are the truth, and give the same measure again.</summary>
/// <param name="Name">The measure's name in camel case: "area", "equivalentDiameter".</param>
/// <param name="Estimate">The value with its standard uncertainty.</param>
/// <param name="Unit">The unit: "mm²", "mm"; "1" for a pure number.</param>
/// <param name="Budget">The contributions to the uncertainty; null when none are stated.</param>
public sealed record DocumentMeasure(string Name, Estimate Estimate, string Unit, UncertaintyBudget? Budget = null);
