using System.IO.Compression;
using System.Text;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Exchange;

/// <summary>Reads an archive file into a library, within the transaction that the library is in: all of it or nothing.</summary>
internal sealed class ArchiveImport(EntryWriter writer, EntryReader reader, PhotoStore photos, bool skipsTaken)
{
    private readonly HashSet<string> photoHashes = new(StringComparer.Ordinal); // hashes of the photos that sections came from
    private readonly List<long> added = [];
    private readonly List<long> updated = [];
    private readonly List<SectionPlace> alreadyThere = [];
    private readonly List<SectionPlace> skipped = [];

    public static Result<ImportReport> Read(string path, Func<ArchiveReading, Result<ImportReport>> work)
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            using var zip = new ZipArchive(file, ZipArchiveMode.Read);
            return ArchiveReading.Open(path, zip).Then(work);
        }
        catch (InvalidDataException)
        {
            return ArchiveProblems.NotAnArchive(path);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return ArchiveProblems.Unreadable(path, exception.Message);
        }
    }

    public Result<ImportReport> Run(string path, ArchiveReading archive)
    {
        for (var i = 0; i < archive.Manifest.Entries.Count; i++)
        {
            if (Entry(path, $"Entry {i + 1}", archive, archive.Manifest.Entries[i]) is { } problem)
            {
                return problem;
            }
        }

        foreach (var photo in archive.Manifest.Photos ?? [])
        {
            if (!photoHashes.Contains(photo.Sha256))
            {
                return ArchiveProblems.ManifestUnusable(path, $"No section in it came from the photo \"{photo.Name}\".");
            }

            if (!archive.Photo(photo).TryGet(out var content, out var problem))
            {
                return problem;
            }

            if (photos.IsReferredTo(photo.Sha256))
            {
                photos.Put(photo.Sha256, photo.Name, content);
            }
        }

        return new ImportReport(added, updated, alreadyThere, skipped);
    }

    private Problem? Entry(string path, string name, ArchiveReading archive, ArchivedEntry entry)
    {
        var revisions = new List<ImportedRevision>();
        foreach (var archived in entry.Revisions)
        {
            if (!Revision(path, name, archive, archived).TryGet(out var revision, out var problem))
            {
                return problem;
            }

            revisions.Add(revision);
            photoHashes.Add(revision.Sound.PhotoSha256 ?? string.Empty);
        }

        if (!IsHistory(revisions))
        {
            return ArchiveProblems.ManifestUnusable(path, $"{name} has a history that cannot have happened.");
        }

        if (reader.SameBeginning(revisions[0]) is { } known)
        {
            return Continue(reader.Show(known).ValueOrThrow(), revisions);
        }

        var last = revisions[^1];
        if (last.Action != RevisionAction.Removed && reader.Holder(last.Sound.Content.Place) is { } holder)
        {
            return Taken(holder, last.Sound);
        }

        added.Add(writer.Import(revisions));
        return null;
    }

    // The same entry, here and there: whichever history is the longer one holds, when it begins with the other.
    private Problem? Continue(LibraryEntry here, List<ImportedRevision> coming)
    {
        var last = coming[^1];
        var place = last.Sound.Content.Place;
        if (here.History.Zip(coming).All(pair => pair.Second.IsSameAs(pair.First)))
        {
            if (coming.Count <= here.History.Count)
            {
                alreadyThere.Add(place);
                return null;
            }

            if (last.Action != RevisionAction.Removed && reader.Holder(place) is { } holder && holder != here.Summary.Id)
            {
                return Taken(holder, last.Sound);
            }

            writer.Continue(here.Summary.Id, coming, here.History.Count);
            updated.Add(here.Summary.Id);
            return null;
        }

        return Unlike(here.Current, last.Sound, EntryProblems.HistoriesDiverge(reader.Path, place.Path, here.Summary.Id));
    }

    private Problem? Taken(long holder, CheckedContent coming) => Unlike(
        reader.Show(holder).ValueOrThrow().Current, coming, EntryProblems.PlaceTaken(reader.Path, coming.Content.Place.Path, holder));

    private Problem? Unlike(EntryRevision current, CheckedContent coming, Problem problem)
    {
        var isSame = coming.HoldsTheSameAs(current);
        if (!isSame && !skipsTaken)
        {
            return problem;
        }

        (isSame ? alreadyThere : skipped).Add(coming.Content.Place);
        return null;
    }

    private static Result<ImportedRevision> Revision(string path, string name, ArchiveReading archive, ArchivedRevision archived)
    {
        if (!Enum.TryParse<RevisionAction>(archived.Action, ignoreCase: true, out var action) || EntryReader.Word(action) != archived.Action)
        {
            return ArchiveProblems.ManifestUnusable(path, $"{name} has a revision with the unknown action \"{archived.Action}\".");
        }

        if (!Moments.TryRead(archived.At, out var at))
        {
            return ArchiveProblems.ManifestUnusable(path, $"{name} has a revision at \"{archived.At}\", which is no point in time.");
        }

        if (!PortName.Parse(archived.Port).TryGet(out var port, out var problem))
        {
            return problem;
        }

        return archive.Document(archived.DocumentSha256).Then(bytes => CheckedContent.From(
            new(
                new(archived.Head, port, archived.Station, archived.Stage),
                Encoding.UTF8.GetString(bytes),
                archived.Notes,
                archived.Tags,
                [.. archived.Fields.Select(field => new NumericField(field.Name, field.Value, field.Unit))]),
            archived.Reason)).Then<ImportedRevision>(sound => sound.Sha256 == archived.DocumentSha256
                ? new ImportedRevision(action, archived.Reason, at, sound)
                : ArchiveProblems.HashWrong(path, ArchiveNames.OfDocument(archived.DocumentSha256)));
    }

    private static bool IsHistory(List<ImportedRevision> revisions)
    {
        var isRemoved = false;
        for (var i = 0; i < revisions.Count; i++)
        {
            var action = revisions[i].Action;
            if ((action == RevisionAction.Added) != (i == 0) || isRemoved != (action == RevisionAction.Restored))
            {
                return false;
            }

            isRemoved = action == RevisionAction.Removed;
        }

        return revisions.Count > 0;
    }
}
