using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Comparing;

/// <summary>What can stand in the way of putting sections side by side.</summary>
public static class ComparingProblems
{
    /// <summary>A folder without section documents.</summary>
    public static Problem NoSections(string where) => new(
        "no-sections", "There is no section document (*.section.json) in the folder.", where, "Name the folder that digitise --out wrote to.");

    /// <summary>A folder where one section is wanted.</summary>
    public static Problem FolderForSection(string where) => new(
        "folder-for-section", "This is a folder, and one section is wanted here.", where,
        "Name one section document in it (*.section.json). Whole ports are put side by side by spread and drift, and with a report by job run.");

    /// <summary>A photo where a section is wanted.</summary>
    public static Problem PhotoForSection(string where) => new(
        "photo-for-section", "This is a photo, and not yet a section.", where,
        "Digitise it first (sectionscan digitise), then name the section document (*.section.json) that comes of it.");

    /// <summary>A file of another kind where a section is wanted.</summary>
    public static Problem NoKindOfSection(string where) => new(
        "no-kind-of-section", "The file's name is not that of a section document (.json) or of a drawing of an outline (.dxf, .svg, .csv).", where,
        "Name the section document (*.section.json) that was written beside it, or a drawing of its outline.");

    /// <summary>A drawing that only import-outline can be told how to read.</summary>
    public static Problem ImportFirst(Problem ofDrawing)
    {
        ArgumentNullException.ThrowIfNull(ofDrawing);
        return ofDrawing with { Remedy = $"Make a section document of it by import-outline, and name that. There: {ofDrawing.Remedy}" };
    }

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
    /// <param name="name">Its name.</param>
    /// <param name="isTarget">True for a target shape: the port's own section is missing.</param>
    /// <param name="lacksTarget">True when the target is what is missing.</param>
    public static Problem StationAlone(string name, bool isTarget, bool lacksTarget) =>
        lacksTarget ? new(
            "station-without-target", $"{name} has no target of its station.", name,
            "Settle a target for it (target-shape tells why when it makes none), or work without this station.")
        : new(
            "station-alone", isTarget ? $"{name} is a target for a station that the port lacks." : $"{name} has no counterpart of its station.", name,
            "Photograph the missing station, or each slice with its station tag; or name the two sections themselves.");

    private static string Stations(IReadOnlyList<SectionInput> sections) =>
        string.Join(", ", sections.Select(section => section.Station?.ToString(CultureInfo.InvariantCulture) ?? "none"));
}
