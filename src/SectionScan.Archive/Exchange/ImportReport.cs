using SectionScan.Archive.Entries;

namespace SectionScan.Archive.Exchange;

/// <summary>What an import did.</summary>
/// <param name="Added">The numbers of the new entries in this library.</param>
/// <param name="Updated">The numbers of the entries here that went on in the archive: its newer revisions were added.</param>
/// <param name="AlreadyThere">Places whose entry here holds the very same, or went on here since; left as they are.</param>
/// <param name="Skipped">Places whose entry here is another one, or was corrected otherwise; left as they are, on request.</param>
public sealed record ImportReport(
    IReadOnlyList<long> Added, IReadOnlyList<long> Updated, IReadOnlyList<SectionPlace> AlreadyThere, IReadOnlyList<SectionPlace> Skipped);
