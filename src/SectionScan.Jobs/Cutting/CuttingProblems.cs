using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Cutting;

/// <summary>What can be wrong with the sections of a cut.</summary>
public static class CuttingProblems
{
    /// <summary>A folder holds no section document.</summary>
    public static Problem NoSections(string folder, string ending) => new(
        "no-sections", $"The folder holds no file that ends in {ending}.", folder, "Name the folder that sectionscan digitise wrote to with --out.");

    /// <summary>Two sections of one folder are of the same station.</summary>
    public static Problem StationTwice(string folder, string station, IReadOnlyList<string> names) => new(
        "station-twice", $"Station {station} is there more than once: {string.Join(", ", names)}.", folder,
        "Keep one port in one folder, each of its stations once.");

    /// <summary>Present and target have no station in common.</summary>
    public static Problem NoCommonStation(string present, string target) => new(
        "no-common-station", $"The two have no station in common: {present} and {target}.", "stations",
        "Give sections of the same stations, or one section and one target.");

    /// <summary>A table holds no keep-out for a station.</summary>
    public static Problem NoKeepOuts(string where, int? station) => new(
        "no-keep-outs",
        station is { } number ? FormattableString.Invariant($"The table holds no keep-out and no reading for station {number}.") : "The table holds no keep-out and no reading without a station.",
        where,
        "Add a line for it, or leave the station empty for what is there at every station.");
}
