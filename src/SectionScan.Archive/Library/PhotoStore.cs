using System.Globalization;
using System.Security.Cryptography;
using Dapper;
using Microsoft.Data.Sqlite;
using SectionScan.Archive.Entries;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Library;

/// <summary>The original photos, each once, within the transaction that the connection is in.</summary>
internal sealed class PhotoStore(string path, SqliteConnection connection)
{
    /// <summary>The largest photo that is kept.</summary>
    public const int MaximumBytes = 100_000_000;

    private const int LongestName = 120;

    /// <summary>Keeps a photo of an entry: the one that any of its revisions came from.</summary>
    public Result<string> Keep(long id, string name, ReadOnlyMemory<byte> content)
    {
        var (entry, now) = Entry(id);
        if (entry is null)
        {
            return EntryProblems.NotFound(path, id.ToString(CultureInfo.InvariantCulture));
        }

        if (content.Length > MaximumBytes)
        {
            return PhotoProblems.TooLarge(name, MaximumBytes);
        }

        if (!IsName(name))
        {
            return PhotoProblems.NameUnusable(name);
        }

        var sha256 = Convert.ToHexStringLower(SHA256.HashData(content.Span));
        var isOfEntry = connection.ExecuteScalar<long>(
            "SELECT count(*) FROM revision r JOIN document d ON d.id = r.document_id WHERE r.entry_id = @id AND d.photo_sha256 = @sha256", new { id, sha256 }) > 0;
        if (!isOfEntry)
        {
            return PhotoProblems.NotOfEntry(entry, name, sha256, now);
        }

        Put(sha256, name, content);
        return sha256;
    }

    /// <summary>Keeps a photo whose name and hash have been checked; one that is there already stays as it is.</summary>
    public void Put(string sha256, string name, ReadOnlyMemory<byte> content) => connection.Execute(
        "INSERT INTO photo (sha256, name, content) VALUES (@sha256, @name, @content) ON CONFLICT DO NOTHING", new { sha256, name, content = content.ToArray() });

    /// <summary>True when a document of the library came from the photo.</summary>
    public bool IsReferredTo(string sha256) =>
        connection.ExecuteScalar<long>("SELECT count(*) FROM document WHERE photo_sha256 = @sha256", new { sha256 }) > 0;

    /// <summary>The photo that an entry came from.</summary>
    public Result<KeptPhoto> Get(long id)
    {
        var (entry, wanted) = Entry(id);
        return entry is null ? EntryProblems.NotFound(path, id.ToString(CultureInfo.InvariantCulture))
            : wanted is not null && Find(wanted) is { } kept ? kept
            : PhotoProblems.NotKept(entry, wanted);
    }

    /// <summary>A photo by its hash, or null.</summary>
    public KeptPhoto? Find(string sha256)
    {
        var row = connection.QuerySingleOrDefault<Row>("SELECT name AS Name, content AS Content FROM photo WHERE sha256 = @sha256", new { sha256 });
        return row is null ? null : new(row.Name, sha256, row.Content);
    }

    /// <summary>Those of the hashes whose photo is kept.</summary>
    public IReadOnlySet<string> Kept(IEnumerable<string> hashes)
    {
        var all = connection.Query<string>("SELECT sha256 FROM photo").ToHashSet(StringComparer.Ordinal);
        return hashes.Where(all.Contains).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>True for a plain file name with an ending.</summary>
    public static bool IsName(string name) => name.Length is > 0 and <= LongestName
        && !name.Any(c => char.IsControl(c) || c is '/' or '\\' or ':')
        && Path.GetExtension(name) is { Length: > 1 and < 7 } ending && ending.Skip(1).All(char.IsAsciiLetterOrDigit)
        && Path.GetFileNameWithoutExtension(name).Trim('.').Length > 0;

    private (string? Entry, string? PhotoSha256) Entry(long id) =>
        new EntryReader(path, connection).Summaries([id]) is [var summary] ? (summary.Place.Path, summary.PhotoSha256) : (null, null);

    private sealed record Row(string Name, byte[] Content);
}
