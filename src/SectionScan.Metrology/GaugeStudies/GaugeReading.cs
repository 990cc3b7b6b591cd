namespace SectionScan.Metrology.GaugeStudies;

/// <summary>One reading of a gauge study.</summary>
/// <param name="Part">What was measured: the plug's name.</param>
/// <param name="Operator">Who laid it and took the photo.</param>
/// <param name="Value">The reading, in the study's unit.</param>
public readonly record struct GaugeReading(string Part, string Operator, double Value);
