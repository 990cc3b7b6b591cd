using SectionScan.Archive.Entries;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Libraries;

/// <summary>Finds a revision of an entry by its number.</summary>
public static class EntryRevisions
{
    /// <summary>One of the entry's revisions.</summary>
    /// <param name="entry">The entry with its history.</param>
    /// <param name="number">The revision's number; null for how the entry is now.</param>
    /// <returns>The revision, or <c>revision-not-found</c>.</returns>
    public static Result<EntryRevision> Find(LibraryEntry entry, int? number)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return number is not { } wanted ? entry.Current
            : entry.History.FirstOrDefault(each => each.Number == wanted) is { } found ? found
            : (Result<EntryRevision>)LibraryUseProblems.RevisionNotFound(entry.Summary.Place.Path, wanted, entry.Summary.RevisionNumber);
    }
}
