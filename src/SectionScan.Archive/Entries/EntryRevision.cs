namespace SectionScan.Archive.Entries;

/// <summary>One state of an entry, whole and for ever.</summary>
/// <param name="Number">1 for the first, then one more each.</param>
/// <param name="Action">What was done.</param>
/// <param name="Reason">Why, in the person's words; may be empty on the first.</param>
/// <param name="At">When, to the millisecond.</param>
/// <param name="Content">What the entry held from then on.</param>
/// <param name="DocumentSha256">SHA-256 of the document's UTF-8 bytes, lower-case hexadecimal.</param>
public sealed record EntryRevision(
    int Number,
    RevisionAction Action,
    string Reason,
    DateTimeOffset At,
    EntryContent Content,
    string DocumentSha256);
