using SectionScan.Drawings.Sections;

namespace SectionScan.Drawings.Walls;

/// <summary>What stands beside the outlines on a page of walls.</summary>
/// <param name="Title">The head line: "Walls, station 3".</param>
/// <param name="Subtitle">What was compared with what.</param>
/// <param name="Notes">What was assumed, and cautions, in sentences.</param>
/// <param name="Unit">The unit shown.</param>
public sealed record WallsCaption(string Title, string Subtitle, IReadOnlyList<string> Notes, LengthUnit Unit);
