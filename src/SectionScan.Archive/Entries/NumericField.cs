namespace SectionScan.Archive.Entries;

/// <summary>A number that a person keeps with a section: valve diameter 38 mm, flow 210 cfm.</summary>
/// <param name="Name">The field's name; large and small letters are the same.</param>
/// <param name="Value">The value, finite.</param>
/// <param name="Unit">Its unit as the person writes it; empty for a pure number.</param>
public sealed record NumericField(string Name, double Value, string Unit);
