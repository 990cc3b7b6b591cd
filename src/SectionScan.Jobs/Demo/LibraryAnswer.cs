using SectionScan.Archive.Search;

namespace SectionScan.Jobs.Demo;

/// <summary>What the library answered.</summary>
/// <param name="Asked">The station whose nearest shapes were looked for.</param>
/// <param name="Found">The nearest entries, the section itself first.</param>
internal sealed record LibraryAnswer(StationComparison Asked, IReadOnlyList<SimilarSection> Found);
