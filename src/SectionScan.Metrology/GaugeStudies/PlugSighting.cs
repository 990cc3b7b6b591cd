namespace SectionScan.Metrology.GaugeStudies;

/// <summary>A plug as it was measured.</summary>
/// <param name="LongerMm">Its greatest width: the diameter, the length over all, the longer side; mm.</param>
/// <param name="ShorterMm">Its least width, mm.</param>
/// <param name="RoughnessMm">How far the middles of its sides stray from straight lines, root mean square, mm; zero where it has none.</param>
/// <param name="ExcessMm">How much too wide it is, mm (<see cref="Plug.ExcessMm"/>).</param>
public readonly record struct PlugSighting(double LongerMm, double ShorterMm, double RoughnessMm, double ExcessMm);
