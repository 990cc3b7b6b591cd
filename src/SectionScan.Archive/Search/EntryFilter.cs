using SectionScan.Archive.Entries;

namespace SectionScan.Archive.Search;

/// <summary>Which entries to list; what is null does not narrow the list. Names compare without regard to large and small
/// letters.</summary>
/// <param name="Head">The head's name.</param>
/// <param name="Port">The port.</param>
/// <param name="Station">The station's number.</param>
/// <param name="Stage">The stage of the work; an empty text for entries without one.</param>
/// <param name="Tag">A tag.</param>
/// <param name="PhotoSha256">SHA-256 of the photo.</param>
/// <param name="IncludesRemoved">True: entries marked as removed are listed too.</param>
public sealed record EntryFilter(
    string? Head = null,
    PortName? Port = null,
    int? Station = null,
    string? Stage = null,
    string? Tag = null,
    string? PhotoSha256 = null,
    bool IncludesRemoved = false);
