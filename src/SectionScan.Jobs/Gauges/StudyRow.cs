using SectionScan.Metrology.GaugeStudies;

namespace SectionScan.Jobs.Gauges;

/// <summary>One photo of a gauge study, as its table tells it.</summary>
/// <param name="Photo">Full path of the photo.</param>
/// <param name="Plug">What it shows.</param>
/// <param name="ThicknessMm">Height of the plug's face above the sheet, mm.</param>
/// <param name="Person">Who took it.</param>
/// <param name="Camera">With what.</param>
/// <param name="Sheet">On which print.</param>
public sealed record StudyRow(string Photo, Plug Plug, double ThicknessMm, string Person, string Camera, string Sheet);
