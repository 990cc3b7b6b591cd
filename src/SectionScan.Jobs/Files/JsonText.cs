using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace SectionScan.Jobs.Files;

/// <summary>An answer for programs as text.</summary>
/// <remarks>One line of RFC 8259 JSON, ended by \n. Names are camelCase, enumerations are camelCase words, numbers are written shortest so
/// that they read back to the same bits; a number that is not finite is refused by the serialiser.</remarks>
public static class JsonText
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        // Readable ° and é; the document is never pasted into a page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NumberHandling = JsonNumberHandling.Strict,

        // A standard uncertainty u stands beside an expanded one U.
        PropertyNameCaseInsensitive = false,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
    };

    /// <summary>The document's text.</summary>
    public static string Of<T>(T document)
        where T : notnull => JsonSerializer.Serialize(document, Options) + "\n";
}
