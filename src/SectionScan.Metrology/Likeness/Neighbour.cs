namespace SectionScan.Metrology.Likeness;

/// <summary>A shape found near another one.</summary>
/// <param name="Id">The number that it was put into the index with.</param>
/// <param name="Likeness">How near it is and how it was laid on.</param>
public readonly record struct Neighbour(long Id, ShapeLikeness Likeness);
