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

        return new ImportReport(added, alreadyThere, skipped);
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

        var last = revisions[^1];
        if (last.Action == RevisionAction.Removed && reader.HasRemoval(last.Sound.Sha256, last.At))
        {
            alreadyThere.Add(last.Sound.Content.Place);
            return null;
        }

        if (last.Action != RevisionAction.Removed && reader.Holder(last.Sound.Content.Place) is { } holder)
        {
            return Taken(holder, last.Sound);
        }

        added.Add(writer.Import(revisions));
        return null;
    }

    private Problem? Taken(long holder, CheckedContent coming)
    {
        var place = coming.Content.Place;
        var current = reader.Show(holder).ValueOrThrow().Current;
        var isSame = current.DocumentSha256 == coming.Sha256
            && current.Content.Notes == coming.Content.Notes
            && current.Content.Tags.SequenceEqual(coming.Content.Tags)
            && current.Content.Fields.SequenceEqual(coming.Content.Fields);
        if (!isSame && !skipsTaken)
        {
            return EntryProblems.PlaceTaken(reader.Path, place.Path, holder);
        }

        (isSame ? alreadyThere : skipped).Add(place);
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
