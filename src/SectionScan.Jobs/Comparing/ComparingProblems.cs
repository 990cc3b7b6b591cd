using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Comparing;

/// <summary>What can stand in the way of putting sections side by side.</summary>
public static class ComparingProblems
{
    /// <summary>A folder without section documents.</summary>
    public static Problem NoSections(string where) => new(
        "no-sections", "There is no section document (*.section.json) in the folder.", where, "Name the folder that digitise --out wrote to.");

    /// <summary>Two sections of one station where one is wanted.</summary>
    public static Problem StationTwice(int station, IReadOnlyList<string> names) => new(
        "station-twice",
        string.Create(CultureInfo.InvariantCulture, $"Station {station} is there more than once: {string.Join(", ", names)}."),
        "sections",
        "Keep one document a station in the folder, or name the two sections themselves.");

    /// <summary>Sections without a station, of which one port has several.</summary>
    public static Problem NoStation(IReadOnlyList<string> names) => new(
        "no-station", $"These sections have no station: {string.Join(", ", names)}.", "sections", "Photograph each slice with its station tag, or name single sections.");

    /// <summary>A mark far outside any section.</summary>
    public static Problem MarkOutOfRange(double farthestMm) => new(
        "mark-out-of-range",
        string.Create(CultureInfo.InvariantCulture, $"A mark lies more than {farthestMm:0} mm from the section's origin, or is no number."),
        "marks",
        "Give x,y in mm in the section's own frame: x right, y toward the roof, from the section's middle.");

    /// <summary>Nothing to put side by side.</summary>
    public static Problem NoStationInBoth() => new(
        "no-station-in-both", "No station is in both.", "sections", "Check the station tags in the photos, or name two single sections.");

    /// <summary>The same, with the stations that there are.</summary>
    public static Problem NoStationInBoth(IReadOnlyList<SectionInput> first, IReadOnlyList<SectionInput> second) =>
        NoStationInBoth() with { What = $"No station is in both: {Stations(first)} and {Stations(second)}." };

    /// <summary>A section that has no counterpart.</summary>
    public static Problem StationAlone(string name) => new(
        "station-alone", $"{name} has no counterpart of its station.", name,
        "Photograph the missing station, or each slice with its station tag; or name the two sections themselves.");

    private static string Stations(IReadOnlyList<SectionInput> sections) =>
        string.Join(", ", sections.Select(section => section.Station?.ToString(CultureInfo.InvariantCulture) ?? "none"));
}
