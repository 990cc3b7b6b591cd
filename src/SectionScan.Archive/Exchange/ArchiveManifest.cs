using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;

namespace SectionScan.Archive.Exchange;

/// <summary>The table of contents of an archive file.</summary>
/// <remarks>An archive without photos is of the first form, which every version reads.</remarks>
internal sealed record ArchiveManifest(
    string Schema, IReadOnlyList<ArchivedEntry> Entries, IReadOnlyList<ArchivedFile> Files, IReadOnlyList<ArchivedPhoto>? Photos = null)
{
    public const string SchemaName = "sectionscan/archive/1";
    public const string SchemaNameWithPhotos = "sectionscan/archive/2";

    public static readonly JsonSerializerOptions Form = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        NewLine = "\n",
        MaxDepth = 16,
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };
}

/// <summary>An entry with its history, first revision first.</summary>
internal sealed record ArchivedEntry(IReadOnlyList<ArchivedRevision> Revisions);

/// <summary>A revision; its document is the file documents/HASH.json.</summary>
internal sealed record ArchivedRevision(
    string Action,
    string Reason,
    string At,
    string Head,
    string Port,
    int Station,
    string Stage,
    string Notes,
    IReadOnlyList<string> Tags,
    IReadOnlyList<ArchivedNumber> Fields,
    string DocumentSha256);

/// <summary>A numeric field.</summary>
internal sealed record ArchivedNumber(string Name, double Value, string Unit);

/// <summary>An original photo; it is the file photos/HASH with the ending of its name.</summary>
internal sealed record ArchivedPhoto(string Name, string Sha256);

/// <summary>A file in the archive with the hash of its bytes.</summary>
internal sealed record ArchivedFile(string Name, long Bytes, string Sha256);
