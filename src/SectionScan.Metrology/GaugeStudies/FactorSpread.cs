namespace SectionScan.Metrology.GaugeStudies;

/// <summary>How much readings differ from one person, camera or sheet to another.</summary>
/// <param name="Factor">"person", "camera" or "sheet".</param>
/// <param name="Levels">Those that took part.</param>
/// <param name="ReproducibilityMm">Standard deviation between them, mm; null when there was one only or not each measured every plug
/// equally often.</param>
public sealed record FactorSpread(string Factor, IReadOnlyList<string> Levels, double? ReproducibilityMm);
