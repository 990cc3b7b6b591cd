using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;

namespace SectionScan.Archive.Exchange;

/// <summary>The table of contents of an archive file.</summary>
internal sealed record ArchiveManifest(string Schema, IReadOnlyList<ArchivedEntry> Entries, IReadOnlyList<ArchivedFile> Files)
{
    public const string SchemaName = "sectionscan/archive/1";

    public static readonly JsonSerializerOptions Form = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
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

/// <summary>A file in the archive with the hash of its bytes.</summary>
internal sealed record ArchivedFile(string Name, long Bytes, string Sha256);
