using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Archive.Storage;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Exchange;

/// <summary>Writes entries with their history into one ZIP file. The same entries give the same bytes.</summary>
internal static class ArchiveExport
{
    private const string ReadMe =
        """
        An archive of port sections (sectionscan/archive/1, or /2 when it holds photos).

        manifest.json   the entries: head, port, station and stage, notes, tags and numbers, with every revision and its reason;
                        and the SHA-256 of each file.
        documents/      the section documents (sectionscan/section/1), each named by its SHA-256: outline in mm, x right, y up.

        photos/         the original photos, if they were exported along, each named by its SHA-256.
        SectionScan imports it; any program that reads ZIP and JSON can use it.

        """;

    // The earliest that a ZIP file can tell: the file must not change with the clock.
    private static readonly DateTimeOffset Epoch = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static Result<ExportReport> Write(EntryReader reader, string path, IReadOnlyList<long> ids, bool withPhotos)
    {
        var entries = new List<LibraryEntry>();
        foreach (var id in ids.Distinct().Order())
        {
            if (!reader.Show(id).TryGet(out var entry, out var missing))
            {
                return missing;
            }

            entries.Add(entry);
        }

        var store = new PhotoStore(reader.Path, reader.Connection);
        var photos = withPhotos ? store.Kept(reader.PhotosOf(ids)).Order(StringComparer.Ordinal).ToList() : [];
        return WholeFile.Write(path, file => Write(file, entries, photos, store))
            .Then<ExportReport>(bytes => new ExportReport(
                entries.Count, entries.SelectMany(each => each.History).Select(each => each.DocumentSha256).Distinct().Count(), photos.Count, bytes));
    }

    private static void Write(Stream file, List<LibraryEntry> entries, List<string> photos, PhotoStore store)
    {
        using var zip = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true);
        var files = new SortedDictionary<string, ArchivedFile>(StringComparer.Ordinal);
        Add(zip, ArchiveNames.ReadMe, ReadMe.ReplaceLineEndings("\n"), files);
        foreach (var revision in entries.SelectMany(each => each.History))
        {
            Add(zip, ArchiveNames.OfDocument(revision.DocumentSha256), revision.Content.DocumentJson, files);
        }

        List<ArchivedPhoto>? archivedPhotos = photos.Count == 0 ? null : [];
        foreach (var photo in photos.Select(store.Find).OfType<KeptPhoto>())
        {
            archivedPhotos!.Add(new(photo.Name, photo.Sha256));
            Add(zip, ArchiveNames.OfPhoto(archivedPhotos[^1]), photo.Content.Span, files);
        }

        var manifest = new ArchiveManifest(
            archivedPhotos is null ? ArchiveManifest.SchemaName : ArchiveManifest.SchemaNameWithPhotos, entries.ConvertAll(Archived), [.. files.Values], archivedPhotos);
        Add(zip, ArchiveNames.Manifest, JsonSerializer.Serialize(manifest, ArchiveManifest.Form) + "\n", files);
    }

    private static void Add(ZipArchive zip, string name, string text, SortedDictionary<string, ArchivedFile> files) =>
        Add(zip, name, Encoding.UTF8.GetBytes(text), files);

    private static void Add(ZipArchive zip, string name, ReadOnlySpan<byte> bytes, SortedDictionary<string, ArchivedFile> files)
    {
        if (files.TryAdd(name, new(name, bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes)))))
        {
            var entry = zip.CreateEntry(name, CompressionLevel.Optimal);
            entry.LastWriteTime = Epoch;
            using var content = entry.Open();
            content.Write(bytes);
        }
    }

    private static ArchivedEntry Archived(LibraryEntry entry) => new([.. entry.History.Select(revision =>
    {
        var content = revision.Content;
        return new ArchivedRevision(
            EntryReader.Word(revision.Action),
            revision.Reason,
            Moments.ToText(revision.At),
            content.Place.Head,
            content.Place.Port.ToString(),
            content.Place.Station,
            content.Place.Stage,
            content.Notes,
            content.Tags,
            [.. content.Fields.Select(field => new ArchivedNumber(field.Name, field.Value, field.Unit))],
            revision.DocumentSha256);
    })]);
}
