using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.Digitising;

/// <summary>A section document with its measures.</summary>
/// <param name="Document">The document, rounded as it is written.</param>
/// <param name="Measured">Its measures with uncertainties.</param>
/// <param name="FileName">The name of its file, without folder.</param>
public sealed record DigitisedDocument(SectionDocument Document, MeasuredOutline Measured, string FileName);
