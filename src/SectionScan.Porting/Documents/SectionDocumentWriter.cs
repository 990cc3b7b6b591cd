using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Sections;

namespace SectionScan.Porting.Documents;

/// <summary>From a document to its text.</summary>
internal static class SectionDocumentWriter
{
    /// <summary>How plain records of facts are written and read: every member, camel case, none left out, none unknown.</summary>
    public static readonly JsonSerializerOptions Facts = CreateFacts();

    private static readonly JavaScriptEncoder Letters = JavaScriptEncoder.Create(UnicodeRanges.All);

    public static string Write(SectionDocument document, IReadOnlyList<DocumentMeasure> measures)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new() { Indented = true, NewLine = "\n", Encoder = Letters }))
        {
            json.WriteStartObject();
            json.WriteString("schema", SectionDocument.SchemaName);
            json.WriteString("program", document.Program);
            Write(json, document.Section);
            WriteMeasures(json, measures);
            Write(json, document.Section.ErrorSources);
            WriteProvenance(json, document);
            if (document.Corrections.Count > 0)
            {
                WriteFacts(json, "corrections", document.Corrections);
            }

            SectionMarksFields.Write(json, document.Marks);
            if (document.TargetShape is { } shape)
            {
                WriteFacts(json, "targetShape", shape);
            }

            WritePoints(json, "outline", document.Section.Outline.Points.ToArray().Select(p => (p.XMm, p.YMm)));
            WritePoints(json, "placedOutline", document.PlacedOutline.Select(p => (p.XMm, p.YMm)));
            json.WriteEndObject();
        }

        bytes.WriteByte((byte)'\n');
        return Encoding.UTF8.GetString(bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
    }

    private static void Write(Utf8JsonWriter json, Section section)
    {
        if (section.Station is { } station)
        {
            json.WriteNumber("station", station);
        }
        else
        {
            json.WriteNull("station");
        }

        json.WriteString("subject", SubjectWord(section.Subject));
        json.WriteNumber("thicknessMm", section.ThicknessMm);
        json.WriteStartArray("warnings");
        foreach (var warning in section.Warnings)
        {
            json.WriteStringValue(warning);
        }

        json.WriteEndArray();
    }

    private static string SubjectWord(SectionSubject subject) => subject switch
    {
        SectionSubject.Mould => "mould",
        SectionSubject.Opening => "opening",
        _ => "target",
    };

    private static void Write(Utf8JsonWriter json, IReadOnlyList<OutlineErrorSource> sources)
    {
        json.WriteStartArray("errorSources");
        foreach (var source in sources)
        {
            json.WriteStartObject();
            json.WriteString("name", source.Name);
            json.WriteBoolean("isAssumed", source.IsAssumed);
            WriteFacts(json, "effects", source.Effects);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteMeasures(Utf8JsonWriter json, IReadOnlyList<DocumentMeasure> measures)
    {
        if (measures.Count == 0)
        {
            return;
        }

        json.WriteStartObject("measures");
        foreach (var measure in measures)
        {
            json.WriteStartObject(measure.Name);
            json.WriteNumber("value", measure.Estimate.Value);
            json.WriteNumber("u", measure.Estimate.StandardUncertainty);
            json.WriteNumber("U", measure.Estimate.ExpandedUncertainty);
            json.WriteString("unit", measure.Unit);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteStartObject("budget");
        foreach (var measure in measures.Where(each => each.Budget is not null))
        {
            json.WriteStartArray(measure.Name);
            foreach (var row in measure.Budget!.Rows)
            {
                json.WriteStartObject();
                json.WriteString("source", row.Source);
                json.WriteNumber("u", row.StandardUncertainty);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static void WriteProvenance(Utf8JsonWriter json, SectionDocument document)
    {
        WriteFacts(json, "photo", document.Photo);
        if (document.Target is { } target)
        {
            json.WriteStartObject("target");
            json.WriteString("kind", target.Kind);
            json.WriteNumber("cornersFound", target.CornersFound);
            json.WriteNumber("cornersExpected", target.CornersExpected);
            json.WriteNumber("rmsPx", target.RmsPx);
            json.WritePropertyName("printRatio");
            json.WriteRawValue(Pair(target.PrintRatioX, target.PrintRatioY));
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("target");
        }

        WriteFacts(json, "camera", document.Camera);
        json.WriteStartObject("settings");
        foreach (var (name, value) in document.Settings.OrderBy(each => each.Key, StringComparer.Ordinal))
        {
            json.WriteString(name, value);
        }

        json.WriteEndObject();
        if (document.Placement is { } placement)
        {
            json.WriteStartObject("placement");
            json.WritePropertyName("origin");
            json.WriteRawValue(Pair(SectionDocument.RoundedMm(placement.Origin.XMm), SectionDocument.RoundedMm(placement.Origin.YMm)));
            json.WriteNumber("upDeg", SectionDocument.RoundedDeg(placement.Up.Degrees));
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("placement");
        }
    }

    private static void WriteFacts<T>(Utf8JsonWriter json, string name, T facts)
    {
        json.WritePropertyName(name);
        JsonSerializer.Serialize(json, facts, Facts);
    }

    // Raw, so that a point takes one line and not four.
    private static void WritePoints(Utf8JsonWriter json, string name, IEnumerable<(double X, double Y)> points)
    {
        var lines = points.Select(p => "    " + Pair(SectionDocument.RoundedMm(p.X), SectionDocument.RoundedMm(p.Y)));
        var text = string.Join(",\n", lines);
        json.WritePropertyName(name);
        json.WriteRawValue(text.Length == 0 ? "[]" : $"[\n{text}\n  ]");
    }

    internal static string Pair(double x, double y) => double.IsFinite(x) && double.IsFinite(y)
        ? string.Create(CultureInfo.InvariantCulture, $"[{x:R}, {y:R}]")
        : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"A document holds finite numbers only, not [{x}, {y}]."));

    private static JsonSerializerOptions CreateFacts()
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.General)
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            AllowOutOfOrderMetadataProperties = true,
            RespectNullableAnnotations = true,
            RespectRequiredConstructorParameters = true,
            TypeInfoResolver = new DefaultJsonTypeInfoResolver(),
        };
        options.MakeReadOnly();
        return options;
    }
}
