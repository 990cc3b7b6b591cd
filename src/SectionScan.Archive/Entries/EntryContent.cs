namespace SectionScan.Archive.Entries;

/// <summary>What a person keeps in an entry.</summary>
/// <param name="Place">Where the section belongs.</param>
/// <param name="DocumentJson">The section document, as written by <see cref="Porting.Documents.SectionDocumentFormat"/>; kept to the
/// letter.</param>
/// <param name="Notes">Free text; may be empty.</param>
/// <param name="Tags">Free words to find it by; each once, large and small letters alike.</param>
/// <param name="Fields">Numbers, each name once.</param>
public sealed record EntryContent(
    SectionPlace Place,
    string DocumentJson,
    string Notes,
    IReadOnlyList<string> Tags,
    IReadOnlyList<NumericField> Fields)
{
    /// <summary>An entry without notes, tags and fields.</summary>
    public EntryContent(SectionPlace place, string documentJson)
        : this(place, documentJson, "", [], [])
    {
    }
}
