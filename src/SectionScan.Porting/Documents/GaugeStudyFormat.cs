using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Documents;

/// <summary>The gauge study as text: indented JSON with its schema first, UTF-8, lines ending in \n.</summary>
public static class GaugeStudyFormat
{
    /// <summary>The longest text that is read.</summary>
    public const int MaximumBytes = 1_000_000;

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        NumberHandling = JsonNumberHandling.Strict,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        IgnoreReadOnlyProperties = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
    };

    /// <summary>Writes a study.</summary>
    public static string Write(GaugeStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return JsonSerializer.Serialize(new Envelope(GaugeStudy.SchemaName, study), Options) + "\n";
    }

    /// <summary>Reads a study.</summary>
    /// <param name="json">The text.</param>
    /// <param name="where">The file, for messages.</param>
    /// <returns>The study, or <c>not-a-gauge-study</c>.</returns>
    public static Result<GaugeStudy> Read(string json, string where)
    {
        ArgumentNullException.ThrowIfNull(json);
        if (json.Length > MaximumBytes)
        {
            return GaugeStudyProblems.NotAGaugeStudy(where, "it is too long");
        }

        try
        {
            var envelope = JsonSerializer.Deserialize<Envelope>(json, Options);
            if (envelope is null || envelope.Schema != GaugeStudy.SchemaName)
            {
                return GaugeStudyProblems.NotAGaugeStudy(where, $"its schema is {envelope?.Schema ?? "missing"}");
            }

            return IsSound(envelope.Study)
                ? envelope.Study
                : GaugeStudyProblems.NotAGaugeStudy(where, "its numbers cannot be those of a study");
        }
        catch (JsonException e)
        {
            return GaugeStudyProblems.NotAGaugeStudy(where, $"line {(e.LineNumber ?? 0) + 1} is not as expected");
        }
    }

    // A tenth of scale or a millimetre of edge is no camera but a mistake.
    private static bool IsSound(GaugeStudy study) =>
        study.Target is "sheet" or "card" && study.PixelMm is > 0 and < 10 && study.RepeatabilityFreedom is > 0 and < 1_000_000
        && (study.PrintRatio is null or { Count: 2 })
        && study.RepeatabilityMm is >= 0 and < 1 && study.ReproducibilityMm is >= 0 and < 1
        && Math.Abs(study.Bias.EdgeMm) < 1 && study.Bias.EdgeStandardUncertaintyMm is >= 0 and < 1
        && Math.Abs(study.Bias.Scale) < 0.1 && study.Bias.ScaleStandardUncertainty is >= 0 and < 0.1;

    private sealed record Envelope(string Schema, GaugeStudy Study);
}
