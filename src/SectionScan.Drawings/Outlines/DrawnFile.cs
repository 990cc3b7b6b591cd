namespace SectionScan.Drawings.Outlines;

/// <summary>The lines that a drawing file holds.</summary>
/// <param name="Lines">The lines, in drawing units, y up.</param>
/// <param name="MmPerUnit">How many mm one drawing unit is, as the file states it; null when it states none.</param>
public sealed record DrawnFile(IReadOnlyList<DrawnLine> Lines, double? MmPerUnit);
