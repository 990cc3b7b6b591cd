using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;

namespace SectionScan.Archive.Exchange;

/// <summary>A revision from an archive file, checked.</summary>
internal sealed record ImportedRevision(RevisionAction Action, string Reason, DateTimeOffset At, CheckedContent Sound);
