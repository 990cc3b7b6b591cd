using SectionScan.Archive.Entries;

namespace SectionScan.Archive.Exchange;

/// <summary>What an import did.</summary>
/// <param name="Added">The numbers of the new entries in this library.</param>
/// <param name="AlreadyThere">Places whose entry here holds the very same; left as they are.</param>
/// <param name="Skipped">Places that another entry holds here; left as they are, on request.</param>
public sealed record ImportReport(IReadOnlyList<long> Added, IReadOnlyList<SectionPlace> AlreadyThere, IReadOnlyList<SectionPlace> Skipped);
