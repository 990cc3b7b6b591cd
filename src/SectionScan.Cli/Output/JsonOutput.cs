using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using SectionScan.Cli.Terminals;

namespace SectionScan.Cli.Output;

/// <summary>Writes a command's answer as the one JSON document on standard output.</summary>
/// <remarks>One line of RFC 8259 JSON, UTF-8 without byte order mark, ended by \n. Names are camelCase, enumerations are camelCase words,
/// numbers are written shortest so that they read back to the same bits; a number that is not finite is refused by the serialiser.</remarks>
public sealed class JsonOutput(Terminal terminal)
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

    private bool isWritten;

    /// <summary>Writes the document. Nothing is written when it cannot be serialised.</summary>
    /// <param name="document">The whole answer, with its schema named inside.</param>
    /// <exception cref="InvalidOperationException">A document was already written in this run.</exception>
    public void Write<T>(T document)
        where T : notnull
    {
        if (isWritten)
        {
            throw new InvalidOperationException("One run writes one JSON document; a second one would make the output unreadable.");
        }

        // Whole before the first byte goes out: a half-written document is worse than none.
        var text = JsonSerializer.Serialize(document, Options);
        isWritten = true;
        terminal.Answers.Profile.Out.Writer.Write(text + "\n");
        terminal.Answers.Profile.Out.Writer.Flush();
    }
}
