using SectionScan.Jobs.Comparing;
using SectionScan.Porting.Cutting;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.Cutting;

/// <summary>The plan of one station.</summary>
/// <param name="Title">"station 3", or the section's name.</param>
/// <param name="Station">The station, or null.</param>
/// <param name="Present">The present section.</param>
/// <param name="Target">The target as it was given.</param>
/// <param name="Cut">The cut.</param>
/// <param name="PresentWalls">The walls as they are now, in the order of the keep-outs given.</param>
public sealed record StationPlan(
    string Title, int? Station, SectionInput Present, SectionInput Target, StationCut Cut, IReadOnlyList<RemainingWall> PresentWalls);
