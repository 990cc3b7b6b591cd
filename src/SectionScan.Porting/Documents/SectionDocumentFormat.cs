using System.Text;
using System.Text.Json;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Documents;

/// <summary>The section document as text: indented JSON with its schema first, in UTF-8, lines ending in \n. The same document
/// always gives the same bytes, and what was read writes the same bytes again.</summary>
public static class SectionDocumentFormat
{
    /// <summary>The longest text that is read: a hundred times what an outline of 2000 points takes.</summary>
    public const int MaximumBytes = 16_000_000;

    /// <summary>The most points that an outline is read with; the convention is 360 to 2000.</summary>
    public const int MaximumPoints = 20_000;

    private const int MaximumDepth = 16;

    // Stated areas are written in full; anything beyond this is an outline changed under its measures.
    private const double AreaAgreement = 1e-4;

    /// <summary>Writes a document. Coordinates are rounded to 0.0001 mm: see <see cref="SectionDocument.Rounded(string)"/>.</summary>
    /// <param name="document">The document; every number in it finite.</param>
    /// <param name="measures">Measures of the rounded outline, to stand beside it; may be left out.</param>
    /// <returns>The JSON text, ending in a line end.</returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static string Write(SectionDocument document, IReadOnlyList<DocumentMeasure>? measures = null)
    {
        ArgumentNullException.ThrowIfNull(document);
        return SectionDocumentWriter.Write(document, measures ?? []);
    }

    /// <summary>Reads a document from text.</summary>
    /// <param name="json">The text.</param>
    /// <param name="where">The file or library entry it comes from, for the message of a refusal.</param>
    /// <returns>The document, or one of <see cref="SectionDocumentProblems"/>, or a problem of the outline itself.</returns>
    public static Result<SectionDocument> Read(string json, string where)
    {
        ArgumentNullException.ThrowIfNull(json);
        if (json.Length > MaximumBytes)
        {
            return SectionDocumentProblems.TooLarge(where, MaximumBytes);
        }

        try
        {
            var options = new JsonDocumentOptions { MaxDepth = MaximumDepth, AllowDuplicateProperties = false };
            using var parsed = JsonDocument.Parse(json, options);
            return Read(parsed.RootElement, where);
        }
        catch (JsonException exception)
        {
            return SectionDocumentProblems.NotJson(where, (exception.LineNumber ?? 0) + 1, (exception.BytePositionInLine ?? 0) + 1);
        }
    }

    /// <summary>Reads a document from UTF-8 bytes, never more of them than <see cref="MaximumBytes"/>.</summary>
    /// <param name="utf8">The bytes, from here to the end.</param>
    /// <param name="where">The file it comes from, for the message of a refusal.</param>
    /// <returns>As <see cref="Read(string, string)"/>.</returns>
    /// <exception cref="IOException">The stream itself failed.</exception>
    public static Result<SectionDocument> Read(Stream utf8, string where)
    {
        ArgumentNullException.ThrowIfNull(utf8);
        using var bytes = new MemoryStream();
        var block = new byte[65536];
        int count;
        while ((count = utf8.Read(block)) > 0)
        {
            bytes.Write(block, 0, count);
            if (bytes.Length > MaximumBytes)
            {
                return SectionDocumentProblems.TooLarge(where, MaximumBytes);
            }
        }

        var content = bytes.GetBuffer().AsSpan(0, (int)bytes.Length);
        return Read(Encoding.UTF8.GetString(content.StartsWith(Encoding.UTF8.Preamble) ? content[3..] : content), where);
    }

    private static Result<SectionDocument> Read(JsonElement root, string where)
    {
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("schema", out var named) || named.ValueKind != JsonValueKind.String)
        {
            return SectionDocumentProblems.NotASectionDocument(where, null);
        }

        // GetRawText, not GetString: the schema may hold half a surrogate pair, which GetString refuses by an exception.
        var schema = named.GetRawText().Trim('"');
        if (schema != SectionDocument.SchemaName)
        {
            var family = SectionDocument.SchemaName[..(SectionDocument.SchemaName.LastIndexOf('/') + 1)];
            var isLater = schema.StartsWith(family, StringComparison.Ordinal)
                && int.TryParse(schema.AsSpan(family.Length), out var version) && version > 1;
            return isLater ? SectionDocumentProblems.LaterVersion(where, schema) : SectionDocumentProblems.NotASectionDocument(where, schema);
        }

        var reader = new DocumentFieldReader(where);
        var top = new DocumentField(root, "");
        return SectionDocumentReader.Read(reader, top).Then(document => Agrees(reader, top, document, where));
    }

    private static Result<SectionDocument> Agrees(DocumentFieldReader reader, DocumentField top, SectionDocument document, string where)
    {
        if (top.Optional("measures")?.Optional("area")?.Optional("value") is not { } stated)
        {
            return document;
        }

        var statedMm2 = reader.Number(stated);
        var outlineMm2 = PolygonMoments.Of(document.Section.Outline.Points).AreaMm2;
        return reader.FirstProblem is { } problem ? problem
            : Math.Abs(statedMm2 - outlineMm2) > AreaAgreement * outlineMm2 ? SectionDocumentProblems.ContradictsItself(where, statedMm2, outlineMm2)
            : document;
    }
}
