using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Comparing;

/// <summary>The sections of two ports put together.</summary>
/// <param name="Pairs">Two sections of one station each, in the order of their stations.</param>
/// <param name="Alone">Sections of a station that the other port lacks, or of none: nobody may take them for done.</param>
public sealed record SectionPairing(IReadOnlyList<(SectionInput First, SectionInput Second)> Pairs, IReadOnlyList<SectionInput> Alone)
{
    /// <summary>What each section that is left alone lacks: a target is settled, a port is photographed.</summary>
    public IReadOnlyList<Problem> Missing => [.. Alone.Select(alone => ComparingProblems.StationAlone(
        alone.Name, isTarget: alone.IsExact, lacksTarget: !alone.IsExact && Pairs.Any(pair => pair.First.IsExact || pair.Second.IsExact)))];
}
