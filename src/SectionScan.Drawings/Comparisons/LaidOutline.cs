using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Comparisons;

/// <summary>One of several outlines of a station, laid on the others.</summary>
/// <param name="Name">Whose it is: a cylinder's port, a stage of the work.</param>
/// <param name="Outline">The outline where it was laid, mm.</param>
/// <param name="Course">How far its wall lies outside the one that all were laid on, mm, with the direction from that one's centroid,
/// degrees counter-clockwise from the right wall.</param>
public sealed record LaidOutline(string Name, Outline Outline, IReadOnlyList<(double DirectionDeg, double DeviationMm)> Course);
