using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Ports;

namespace SectionScan.Porting.Documents;

/// <summary>The port document as text: JSON in UTF-8 with its schema first, each section's whole document within. The same document
/// always gives the same bytes.</summary>
public static class PortDocumentFormat
{
    /// <summary>The longest text that is read.</summary>
    public const int MaximumBytes = 64_000_000;

    private const int MaximumDepth = 32;
    private const int MostStations = 500;

    private static readonly JavaScriptEncoder Letters = JavaScriptEncoder.Create(UnicodeRanges.All);

    /// <summary>Writes a document.</summary>
    public static string Write(PortDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new() { Indented = true, NewLine = "\n", Encoder = Letters }))
        {
            json.WriteStartObject();
            json.WriteString("schema", PortDocument.SchemaName);
            json.WriteString("program", document.Program);
            json.WriteString("name", document.Port.Name);
            json.WriteString("kind", document.Port.Kind == PortKind.Intake ? "intake" : "exhaust");
            if (document.Port.BowlFromStation is { } bowl)
            {
                json.WriteNumber("bowlFromStation", bowl);
            }
            else
            {
                json.WriteNull("bowlFromStation");
            }

            json.WriteStartArray("stations");
            for (var i = 0; i < document.Sections.Count; i++)
            {
                Write(json, document.Port.Stations[i].Position, document.Sections[i]);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        bytes.WriteByte((byte)'\n');
        return Encoding.UTF8.GetString(bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
    }

    /// <summary>Reads a document.</summary>
    /// <param name="json">The text.</param>
    /// <param name="where">The file, for messages.</param>
    /// <returns>The document, or one of <see cref="PortDocumentProblems"/>, <see cref="SectionDocumentProblems"/> or
    /// <see cref="StationProblems"/>.</returns>
    public static Result<PortDocument> Read(string json, string where)
    {
        ArgumentNullException.ThrowIfNull(json);
        if (json.Length > MaximumBytes)
        {
            return PortDocumentProblems.NotAPortDocument(where, "it is too long");
        }

        try
        {
            using var parsed = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = MaximumDepth, AllowDuplicateProperties = false });
            var root = parsed.RootElement;
            var schema = root.ValueKind == JsonValueKind.Object && root.TryGetProperty("schema", out var named) ? named.GetRawText().Trim('"') : null;
            return schema == PortDocument.SchemaName
                ? Read(new DocumentFieldReader(where), new DocumentField(root, ""))
                : PortDocumentProblems.NotAPortDocument(where, schema is null ? "it does not name its schema" : $"its schema is \"{schema}\"");
        }
        catch (JsonException exception)
        {
            return SectionDocumentProblems.NotJson(where, (exception.LineNumber ?? 0) + 1, (exception.BytePositionInLine ?? 0) + 1);
        }
    }

    private static void Write(Utf8JsonWriter json, StationPosition position, SectionDocument section)
    {
        json.WriteStartObject();
        json.WriteNumber("station", position.Station);
        json.WriteNumber("distanceMm", position.DistanceMm);
        json.WriteNumber("distanceStandardUncertaintyMm", position.DistanceStandardUncertaintyMm);
        json.WriteNumber("tiltDeg", SectionDocument.RoundedDeg(position.Tilt.Degrees));
        json.WriteNumber("turnDeg", SectionDocument.RoundedDeg(position.Turn.Degrees));

        // Raw, so that the section's own text stays as it is written alone.
        json.WritePropertyName("section");
        json.WriteRawValue(SectionDocumentFormat.Write(section).TrimEnd());
        json.WriteEndObject();
    }

    private static Result<PortDocument> Read(DocumentFieldReader reader, DocumentField top)
    {
        var name = reader.Text(reader.Member(top, "name"));
        var kindField = reader.Member(top, "kind");
        var kind = reader.Text(kindField);
        if (kind is not ("intake" or "exhaust"))
        {
            reader.Unusable(kindField, "\"intake\" or \"exhaust\"");
        }

        var bowl = reader.Member(top, "bowlFromStation") is { IsNull: false } told ? reader.Count(told) : (int?)null;
        var program = reader.Text(reader.Member(top, "program"));
        var sections = new List<SectionDocument>();
        var positions = new List<StationPosition>();
        foreach (var station in reader.Items(reader.Member(top, "stations"), MostStations))
        {
            positions.Add(Position(reader, station));
            var section = reader.Member(station, "section");
            if (reader.FirstProblem is { } bad)
            {
                return bad;
            }

            if (!SectionDocumentFormat.Read(section.Element.GetRawText(), $"{reader.Where}, {station.Path}").TryGet(out var document, out var problem))
            {
                return problem;
            }

            sections.Add(document);
        }

        return reader.FirstProblem is { } first
            ? first
            : StationTable.From(positions, reader.Where).Then(table =>
                PortDocument.From(name, kind == "intake" ? PortKind.Intake : PortKind.Exhaust, sections, table, program))
                .Then<PortDocument>(document => document with { Port = document.Port with { BowlFromStation = bowl } });
    }

    private static StationPosition Position(DocumentFieldReader reader, DocumentField station) =>
        new(reader.Count(reader.Member(station, "station")), reader.Number(reader.Member(station, "distanceMm")))
        {
            DistanceStandardUncertaintyMm = reader.Number(reader.Member(station, "distanceStandardUncertaintyMm")),
            Tilt = Angle.FromDegrees(reader.Number(reader.Member(station, "tiltDeg"))),
            Turn = Angle.FromDegrees(reader.Number(reader.Member(station, "turnDeg"))),
        };
}
