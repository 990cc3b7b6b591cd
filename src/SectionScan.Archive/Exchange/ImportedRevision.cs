using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;

namespace SectionScan.Archive.Exchange;

/// <summary>A revision from an archive file, checked.</summary>
internal sealed record ImportedRevision(RevisionAction Action, string Reason, DateTimeOffset At, CheckedContent Sound)
{
    /// <summary>True when a revision kept here is this very one: done at the same moment, for the same reason, with the same content.
    /// Names that differ in capitals alone are the same, as everywhere in the library.</summary>
    public bool IsSameAs(EntryRevision kept) =>
        kept.Action == Action
        && Moments.ToText(kept.At) == Moments.ToText(At)
        && kept.Reason == EntryWriter.TidyReason(Reason)
        && string.Equals(kept.Content.Place.Path, Sound.Content.Place.Path, StringComparison.OrdinalIgnoreCase)
        && Sound.HoldsTheSameAs(kept);
}
