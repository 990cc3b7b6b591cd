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
}
