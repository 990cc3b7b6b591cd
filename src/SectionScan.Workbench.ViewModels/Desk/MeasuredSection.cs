using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>A section document with its measures.</summary>
/// <param name="Document">The document.</param>
/// <param name="Measures">The measures with uncertainties.</param>
public sealed record MeasuredSection(SectionDocument Document, MeasuredOutline Measures);
