using System.Diagnostics.CodeAnalysis;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Exchange;
using SectionScan.Archive.Search;
using SectionScan.Archive.Storage;
using SectionScan.Metrology.Likeness;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Library;

/// <summary>The reference section library: one file of sections with their heads, ports, stations, notes and whole history. What was
/// confirmed is on the disk; nothing is ever overwritten. Several programs may use the file at once, and several threads this
/// object.</summary>
public sealed class SectionLibrary : IDisposable
{
    private readonly Lock gate = new();
    private readonly LibraryConnection connection;
    private readonly TimeProvider time;
    private readonly ShapeCache shapes = new();

    private SectionLibrary(LibraryConnection connection, TimeProvider time)
    {
        this.connection = connection;
        this.time = time;
    }

    /// <summary>The library's file, as it was given.</summary>
    public string Path => connection.Path;

    /// <summary>Opens a library; a file that does not exist yet is made, one of an earlier form is brought up to date.</summary>
    /// <param name="path">The file.</param>
    /// <param name="time">The clock that tells when something was added.</param>
    /// <returns>The library, or a problem of <see cref="LibraryProblems"/>: later version, not a library, damaged, busy, read-only,
    /// disk full, path unusable.</returns>
    [SuppressMessage("IDisposableAnalyzers.Correctness", "IDISP005", Justification = "The caller takes the library out of the result and disposes it.")]
    public static Result<SectionLibrary> Open(string path, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(time);
        return LibraryConnection.Open(path).Then<SectionLibrary>(connection => new SectionLibrary(connection, time));
    }

    /// <summary>Adds a section.</summary>
    /// <returns>The new entry, safe on the disk; or what is wrong with the content, <c>entry-place-taken</c>, or a problem of the
    /// file.</returns>
    public Result<EntrySummary> Add(EntryContent content, string reason = "") =>
        CheckedContent.From(content, reason).Then(sound => Write(writer => writer.Add(sound, reason)));

    /// <summary>Corrects an entry: a new revision, the earlier ones stay.</summary>
    /// <param name="id">The entry.</param>
    /// <param name="content">What it holds from now on.</param>
    /// <param name="reason">Why; not empty.</param>
    /// <param name="basedOn">The revision that the change was made on; the change is refused when there is a newer one. Null: do not
    /// ask.</param>
    public Result<EntrySummary> Revise(long id, EntryContent content, string reason, int? basedOn = null) =>
        CheckedContent.From(content, reason).Then(sound => Write(writer => writer.Revise(id, sound, reason, basedOn)));

    /// <summary>Marks an entry as removed; its history stays, and its place is free for another.</summary>
    public Result<EntrySummary> Remove(long id, string reason) => Write(writer => writer.Mark(id, RevisionAction.Removed, reason));

    /// <summary>Takes the mark away again; refused when another entry has taken the place meanwhile.</summary>
    public Result<EntrySummary> Restore(long id, string reason) => Write(writer => writer.Mark(id, RevisionAction.Restored, reason));

    /// <summary>Lists entries by head, port, station and stage.</summary>
    public Result<IReadOnlyList<EntrySummary>> List(EntryFilter? filter = null) =>
        Read(reader => reader.List(filter ?? new()));

    /// <summary>One entry with its history, removed or not.</summary>
    public Result<LibraryEntry> Show(long id) => Read(reader => reader.Show(id));

    /// <summary>The number of the entry that a person names by number ("12" or "#12") or by path.</summary>
    /// <param name="entry">The number or path. A path finds only entries that are not removed.</param>
    public Result<long> Find(string entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return Read(reader => reader.Find(entry));
    }

    /// <summary>Finds entries in whose head, port, station, stage, notes, tags or fields all the words occur, best first. Each word
    /// may be the beginning of a longer one; accents and large letters do not matter.</summary>
    /// <param name="words">The words.</param>
    /// <param name="count">How many at most.</param>
    /// <param name="includesRemoved">True: entries marked as removed are found too.</param>
    /// <param name="ranges">Ranges that their numbers must lie in as well.</param>
    public Result<IReadOnlyList<EntrySummary>> FindByWords(
        string words, int count = 100, bool includesRemoved = false, IReadOnlyList<NumberRange>? ranges = null)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        return Read(reader => reader.FindByWords(words, ranges ?? [], count, includesRemoved));
    }

    /// <summary>Finds entries whose numbers lie in all the ranges, by head, port, station and stage.</summary>
    public Result<IReadOnlyList<EntrySummary>> FindByNumbers(IReadOnlyList<NumberRange> ranges, bool includesRemoved = false)
    {
        ArgumentNullException.ThrowIfNull(ranges);
        return Read(reader => reader.FindByNumbers(ranges, includesRemoved));
    }

    /// <summary>Finds the entries with the most similar shapes, nearest first, among those that are not removed. Exact.</summary>
    /// <param name="outline">The shape to compare with.</param>
    /// <param name="count">How many at most.</param>
    /// <param name="freedom">What may be done to the entries' shapes to bring them near.</param>
    /// <param name="except">An entry to leave out, such as the one that the outline is from.</param>
    /// <param name="words">Words that the entries must hold, as in <see cref="FindByWords"/>; empty: no matter which.</param>
    /// <param name="ranges">Ranges that their numbers must lie in.</param>
    public Result<IReadOnlyList<SimilarSection>> FindSimilar(
        Outline outline, int count, LikenessFreedom freedom, long? except = null, string words = "", IReadOnlyList<NumberRange>? ranges = null)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(freedom);
        ArgumentNullException.ThrowIfNull(words);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var shape = ShapeDescriptor.Of(outline);
        return Read<IReadOnlyList<SimilarSection>>(reader =>
        {
            IReadOnlySet<long>? among = null;
            if ((words.Length > 0 || ranges is { Count: > 0 }) && !reader.Matching(words, ranges ?? []).TryGet(out among, out var problem))
            {
                return problem;
            }

            shapes.Refresh(reader.Connection);
            var neighbours = shapes.Nearest(shape, count, freedom, id => id != except && among?.Contains(id) != false);
            var entries = reader.Summaries(neighbours.Select(each => each.Id)).ToDictionary(each => each.Id);
            return neighbours.Select(each => new SimilarSection(entries[each.Id], each.Likeness)).ToList();
        });
    }

    /// <summary>Loads all shapes now, so that the first <see cref="FindSimilar"/> need not.</summary>
    /// <returns>How many shapes there are to be found.</returns>
    public Result<int> LoadShapes() => Read<int>(reader => shapes.Refresh(reader.Connection));

    /// <summary>Keeps the original photo of an entry in the library. The entry refers to it by its hash in any case.</summary>
    /// <param name="id">The entry.</param>
    /// <param name="name">The photo's file name, no folders.</param>
    /// <param name="content">Its bytes: those that were digitised, for one revision of the entry at least.</param>
    /// <returns>Its SHA-256; or a problem of <see cref="PhotoProblems"/> or of the file.</returns>
    public Result<string> KeepPhoto(long id, string name, ReadOnlyMemory<byte> content)
    {
        ArgumentNullException.ThrowIfNull(name);
        lock (gate)
        {
            return connection.Write(open => new PhotoStore(Path, open).Keep(id, name, content));
        }
    }

    /// <summary>The photo that an entry came from, when it is kept; else <c>photo-not-kept</c>.</summary>
    public Result<KeptPhoto> Photo(long id) => Read(reader => new PhotoStore(Path, reader.Connection).Get(id));

    /// <summary>Checks the file, the references within it, the index of words, and each document against its hash. Reads everything:
    /// seconds for a large library.</summary>
    public Result<IntegrityReport> CheckIntegrity()
    {
        lock (gate)
        {
            return connection.Write(LibraryIntegrity.Check);
        }
    }

    /// <summary>Copies the whole library into one new file, while it may be in use. A copy that fails leaves nothing behind.</summary>
    /// <param name="path">The new file; nothing may be there yet.</param>
    /// <returns>The size of the copy in bytes.</returns>
    public Result<long> Backup(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        lock (gate)
        {
            return connection.Use(open => LibraryBackup.Write(open, path));
        }
    }

    /// <summary>Writes entries with their whole history into one archive file: a ZIP of manifest.json, which names every entry,
    /// revision and file hash, and the section documents. The same entries give the same bytes.</summary>
    /// <param name="path">The new file; nothing may be there yet.</param>
    /// <param name="ids">The entries: one, those of a port from <see cref="List"/>, or all.</param>
    /// <param name="withPhotos">True: the photos that are kept go along.</param>
    public Result<ExportReport> Export(string path, IReadOnlyList<long> ids, bool withPhotos = false)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(ids);
        return Read(reader => ArchiveExport.Write(reader, path, ids, withPhotos));
    }

    /// <summary>Adds the entries of an archive file with their history, and the newer revisions of those that are here already: all of it,
    /// or nothing when anything is wrong with the file, a place is taken by a different entry, or an entry was changed in both libraries.</summary>
    /// <param name="path">The archive file. It is not trusted: nothing of it is written anywhere but into this library.</param>
    /// <param name="skipsTaken">True: such entries are left out and told, instead of refusing all.</param>
    public Result<ImportReport> Import(string path, bool skipsTaken = false)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        lock (gate)
        {
            return ArchiveImport.Read(path, archive => connection.Write(open =>
                new ArchiveImport(new(Path, open, time), new(Path, open), new(Path, open), skipsTaken).Run(path, archive)));
        }
    }

    /// <summary>Closes the file.</summary>
    [SuppressMessage("IDisposableAnalyzers.Correctness", "IDISP007", Justification = "Open makes the connection for this object alone.")]
    public void Dispose()
    {
        lock (gate)
        {
            connection.Dispose();
        }
    }

    private Result<T> Read<T>(Func<EntryReader, Result<T>> work)
        where T : notnull
    {
        lock (gate)
        {
            return connection.Read(open => work(new(Path, open)));
        }
    }

    private Result<EntrySummary> Write(Func<EntryWriter, Result<long>> work)
    {
        lock (gate)
        {
            return connection.Write(open => work(new(Path, open, time)).Then<EntrySummary>(id => new EntryReader(Path, open).Summaries([id])[0]));
        }
    }
}
