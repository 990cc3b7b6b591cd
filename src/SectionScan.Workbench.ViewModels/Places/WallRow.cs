using SectionScan.Porting.Walls;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>One thing behind the walls as it is listed.</summary>
/// <param name="Index">Its place among the keep-outs, or among the readings.</param>
/// <param name="IsReading">True for a wall that a caliper read.</param>
/// <param name="Station">The station; null for every station.</param>
/// <param name="Name">Its name.</param>
/// <param name="Words">What it is and where.</param>
/// <param name="LimitMm">The wall to leave, mm.</param>
/// <param name="Source">Where it is known from.</param>
public sealed record WallRow(int Index, bool IsReading, int? Station, string Name, string Words, double LimitMm, string Source)
{
    internal static string WordsOf(KeepOutShape shape) => shape switch
    {
        KeepOutCircle circle => FormattableString.Invariant($"circle, radius {circle.RadiusMm:0.##} mm at ({circle.Centre.XMm:0.#}, {circle.Centre.YMm:0.#}) mm"),
        KeepOutLine line => FormattableString.Invariant($"line of {line.Points.Count} places"),
        KeepOutOutline outline => FormattableString.Invariant($"outline of {outline.Outline.Count} places"),
        _ => shape.Kind,
    };

    internal static string WordsOf(WallReading reading) => FormattableString.Invariant(
        $"wall {reading.WallMm.Value:0.##} mm at ({reading.Place.XMm:0.#}, {reading.Place.YMm:0.#}) mm");
}
