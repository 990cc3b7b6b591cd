namespace SectionScan.Jobs.Comparing;

/// <summary>The sections of two ports put together.</summary>
/// <param name="Pairs">Two sections of one station each, in the order of their stations.</param>
/// <param name="Alone">Sections of a station that the other port lacks, or of none: nobody may take them for done.</param>
public sealed record SectionPairing(IReadOnlyList<(SectionInput First, SectionInput Second)> Pairs, IReadOnlyList<SectionInput> Alone);
