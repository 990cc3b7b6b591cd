using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Comparison;

/// <summary>The nearest place on a line of edges.</summary>
/// <param name="Edge">The edge's index: it runs from the corner of this index to the next one.</param>
/// <param name="Point">The nearest place, mm.</param>
/// <param name="DistanceMm">How far it is, mm.</param>
internal readonly record struct EdgeFoot(int Edge, SectionPoint Point, double DistanceMm);
