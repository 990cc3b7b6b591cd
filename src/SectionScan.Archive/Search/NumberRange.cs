namespace SectionScan.Archive.Search;

/// <summary>A range that a number of an entry must lie in, both ends included.</summary>
/// <param name="Name">"area", "width", "height" (of the outline), "station", or the name of a numeric field.</param>
/// <param name="Minimum">The least value, or null for no lower end.</param>
/// <param name="Maximum">The greatest value, or null for no upper end.</param>
/// <param name="Unit">The unit of both ends. Lengths, areas, volumes, flows and pressures are compared across their units: a field
/// kept in inches is found by a range in millimetres. Null: mm and mm² for the outline's own, and the bare number, whatever its unit,
/// for a field.</param>
public sealed record NumberRange(string Name, double? Minimum, double? Maximum, string? Unit = null);
