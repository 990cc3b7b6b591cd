using System.IO.Compression;
using System.Security.Cryptography;
using System.Text.Json;
using SectionScan.Archive.Library;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Archive.Exchange;

/// <summary>An archive file opened for reading: nothing in it is trusted, nothing of it touches the disk.</summary>
internal sealed class ArchiveReading
{
    private const int LongestManifestBytes = 200_000_000;

    private readonly string path;
    private readonly Dictionary<string, ZipArchiveEntry> entries;
    private readonly Dictionary<string, ArchivedFile> files;

    private ArchiveReading(string path, Dictionary<string, ZipArchiveEntry> entries, ArchiveManifest manifest, Dictionary<string, ArchivedFile> files)
    {
        this.path = path;
        this.entries = entries;
        this.files = files;
        Manifest = manifest;
    }

    public ArchiveManifest Manifest { get; }

    /// <summary>Reads the table of contents and checks every file's name and size against it.</summary>
    public static Result<ArchiveReading> Open(string path, ZipArchive zip)
    {
        var entries = new Dictionary<string, ZipArchiveEntry>(StringComparer.Ordinal);
        foreach (var entry in zip.Entries)
        {
            if (!ArchiveNames.IsAllowed(entry.FullName) || !entries.TryAdd(entry.FullName, entry))
            {
                return ArchiveProblems.NameUnusable(path, entry.FullName);
            }
        }

        if (!entries.TryGetValue(ArchiveNames.Manifest, out var table))
        {
            return ArchiveProblems.NotAnArchive(path);
        }

        return Bytes(path, table, LongestManifestBytes).Then(bytes => Manifested(path, bytes)).Then(manifest => Listed(path, entries, manifest));
    }

    /// <summary>The bytes of a document, which have the hash that names them.</summary>
    public Result<byte[]> Document(string sha256)
    {
        var name = ArchiveNames.OfDocument(sha256);
        if (!ArchiveNames.IsAllowed(name) || !entries.TryGetValue(name, out var entry) || !files.TryGetValue(name, out var file))
        {
            return ArchiveProblems.ManifestUnusable(path, $"A revision names the document {sha256}, which is not in the archive.");
        }

        return Bytes(path, entry, SectionDocumentFormat.MaximumBytes).Then<byte[]>(bytes =>
        {
            var hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
            return hash == sha256 && hash == file.Sha256 && bytes.Length == file.Bytes ? bytes : ArchiveProblems.HashWrong(path, name);
        });
    }

    private static Result<ArchiveManifest> Manifested(string path, byte[] bytes)
    {
        try
        {
            // The schema alone first: a later version may have any other fields.
            var named = JsonSerializer.Deserialize<Named>(bytes, ArchiveManifest.Form);
            if (named?.Schema is not (ArchiveManifest.SchemaName or ArchiveManifest.SchemaNameWithPhotos))
            {
                return named is not null && named.Schema.StartsWith("sectionscan/archive/", StringComparison.Ordinal)
                    ? ArchiveProblems.LaterVersion(path, named.Schema)
                    : ArchiveProblems.NotAnArchive(path);
            }

            return JsonSerializer.Deserialize<ArchiveManifest>(bytes, ArchiveManifest.Form)!;
        }
        catch (JsonException exception)
        {
            return ArchiveProblems.ManifestUnusable(path, $"Its manifest.json is not as the format says, at {exception.Path ?? "its beginning"}.");
        }
        catch (InvalidOperationException)
        {
            return ArchiveProblems.ManifestUnusable(path, "Its manifest.json holds text that cannot be read.");
        }
    }

    /// <summary>The bytes of a photo, which have the hash that names them.</summary>
    public Result<byte[]> Photo(ArchivedPhoto photo)
    {
        var name = ArchiveNames.OfPhoto(photo);
        return PhotoStore.IsName(photo.Name) && ArchiveNames.IsAllowed(name) && entries.TryGetValue(name, out var entry)
            ? Bytes(path, entry, PhotoStore.MaximumBytes).Then<byte[]>(bytes =>
                Convert.ToHexStringLower(SHA256.HashData(bytes)) == photo.Sha256 ? bytes : ArchiveProblems.HashWrong(path, name))
            : ArchiveProblems.ManifestUnusable(path, $"It names the photo \"{photo.Name}\", which is not in the archive.");
    }

    private static Result<ArchiveReading> Listed(string path, Dictionary<string, ZipArchiveEntry> entries, ArchiveManifest manifest)
    {
        var files = new Dictionary<string, ArchivedFile>(StringComparer.Ordinal);
        foreach (var file in manifest.Files)
        {
            if (!files.TryAdd(file.Name, file) || !entries.ContainsKey(file.Name))
            {
                return ArchiveProblems.ManifestUnusable(path, $"The file \"{file.Name}\" is listed but not there, or listed twice.");
            }
        }

        return entries.Keys.FirstOrDefault(name => name != ArchiveNames.Manifest && !files.ContainsKey(name)) is { } unlisted
            ? ArchiveProblems.NameUnusable(path, unlisted)
            : new ArchiveReading(path, entries, manifest, files);
    }

    // Counts what comes out and does not trust the stated size, which a forged file understates.
    private static Result<byte[]> Bytes(string path, ZipArchiveEntry entry, int limit)
    {
        if (entry.Length > limit)
        {
            return ArchiveProblems.TooLarge(path, entry.FullName, limit);
        }

        using var content = entry.Open();
        using var bytes = new MemoryStream();
        var block = new byte[65536];
        int count;
        while ((count = content.Read(block)) > 0)
        {
            bytes.Write(block, 0, count);
            if (bytes.Length > limit)
            {
                return ArchiveProblems.TooLarge(path, entry.FullName, limit);
            }
        }

        return bytes.ToArray();
    }

    private sealed record Named(string Schema);
}
