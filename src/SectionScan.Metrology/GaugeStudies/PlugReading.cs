namespace SectionScan.Metrology.GaugeStudies;

/// <summary>One photo of one plug.</summary>
/// <param name="Photo">The photo's file name.</param>
/// <param name="Plug">The plug's name.</param>
/// <param name="Person">Who laid it and took the photo.</param>
/// <param name="Camera">With what.</param>
/// <param name="Sheet">On which print.</param>
/// <param name="ExcessMm">How much too wide it was measured, mm.</param>
/// <param name="PixelMm">What a pixel covers there, mm.</param>
public sealed record PlugReading(string Photo, string Plug, string Person, string Camera, string Sheet, double ExcessMm, double PixelMm);
