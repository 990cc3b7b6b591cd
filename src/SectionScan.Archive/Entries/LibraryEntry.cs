using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Archive.Entries;

/// <summary>An entry with its whole history.</summary>
/// <param name="Summary">The entry as it is now, in short.</param>
/// <param name="History">Every revision, the first one first; the last one is how the entry is now.</param>
public sealed record LibraryEntry(EntrySummary Summary, IReadOnlyList<EntryRevision> History)
{
    /// <summary>How the entry is now.</summary>
    public EntryRevision Current => History[^1];

    /// <summary>The section document as it is now, read.</summary>
    public Result<SectionDocument> ReadDocument() => ReadDocument(Current);

    /// <summary>The section document as one of the revisions had it, read.</summary>
    public Result<SectionDocument> ReadDocument(EntryRevision revision)
    {
        ArgumentNullException.ThrowIfNull(revision);
        return SectionDocumentFormat.Read(revision.Content.DocumentJson, Summary.Place.Path);
    }

    /// <summary>The entry in short as it was at a revision.</summary>
    public Result<EntrySummary> SummaryAt(EntryRevision revision)
    {
        ArgumentNullException.ThrowIfNull(revision);
        var content = revision.Content;
        return ReadDocument(revision).Then<EntrySummary>(document =>
        {
            var facts = PolygonFacts.Of(document.Section.Outline);
            return Summary with
            {
                Place = content.Place,
                RevisionNumber = revision.Number,
                IsRemoved = revision.Action == RevisionAction.Removed,
                ChangedAt = revision.At,
                AreaMm2 = PolygonMoments.Of(document.Section.Outline.Points).AreaMm2,
                WidthMm = facts.WidthMm,
                HeightMm = facts.HeightMm,
                PhotoSha256 = document.Photo?.Sha256,
                Notes = content.Notes,
                Tags = content.Tags,
                Fields = content.Fields,
            };
        });
    }
}
