using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Lengthwise;

/// <summary>The radius of a wall at one place, over a window of 10 mm.</summary>
/// <param name="Place">The middle of the window, mm.</param>
/// <param name="Radius">The radius with its uncertainty; the arc is positive where the wall turns as the whole wall does, negative where it
/// turns back.</param>
public sealed record LocalRadius(SectionPoint Place, ArcRadius Radius);
