using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Cutting;

/// <summary>What can be wrong with the sections of a cut.</summary>
public static class CuttingProblems
{
    /// <summary>A table holds no keep-out for a station.</summary>
    public static Problem NoKeepOuts(string where, int? station) => new(
        "no-keep-outs",
        station is { } number ? FormattableString.Invariant($"The table holds no keep-out and no reading for station {number}.") : "The table holds no keep-out and no reading without a station.",
        where,
        "Add a line for it, or leave the station empty for what is there at every station.");

    /// <summary>The table of stations lacks one that is planned.</summary>
    public static Problem NoPlace(string section) => new(
        "station-without-place",
        $"The table of stations does not say where {section} lies.",
        section,
        "Add a line for it (station, distance_mm), or plan without --stations.");
}
