using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Documents;

/// <summary>The job document as text: JSON that a person writes by hand. Comments and trailing commas are let pass; a name that means
/// nothing is refused, for it is most often a slip of the pen.</summary>
public static class JobDocumentFormat
{
    /// <summary>The longest text that is read.</summary>
    public const int MaximumBytes = 1_000_000;

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.General)
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        AllowDuplicateProperties = false,
        ReadCommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
    };

    /// <summary>Writes a job.</summary>
    public static string Write(JobDocument job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return JsonSerializer.Serialize(job, Options) + "\n";
    }

    /// <summary>Reads a job and checks all that can be checked without its files.</summary>
    /// <param name="json">The text.</param>
    /// <param name="where">The file, for messages.</param>
    /// <returns>The job, or one of <see cref="JobDocumentProblems"/>, <see cref="Engines.EngineProblems"/> or
    /// <see cref="Ports.StationProblems"/>.</returns>
    public static Result<JobDocument> Read(string json, string where)
    {
        ArgumentNullException.ThrowIfNull(json);
        if (json.Length > MaximumBytes)
        {
            return JobDocumentProblems.NotAJob(where, "it is too long");
        }

        try
        {
            var job = JsonSerializer.Deserialize<JobDocument>(json, Options);
            return job is null ? JobDocumentProblems.NotAJob(where, "it is empty")
                : job.Schema != JobDocument.SchemaName ? JobDocumentProblems.NotAJob(where, $"its schema is \"{job.Schema}\"")
                : JobDocumentRules.Check(job, where);
        }
        catch (JsonException exception)
        {
            return JobDocumentProblems.Unusable(where, (exception.LineNumber ?? 0) + 1, exception.Path?.TrimStart('$', '.') ?? "", Reason(exception));
        }
    }

    // The serializer's own words up to what it appends about path and line.
    private static string Reason(JsonException exception)
    {
        var message = exception.Message;
        var end = message.IndexOf(" Path:", StringComparison.Ordinal);
        message = end < 0 ? message : message[..end];
        var typeName = message.IndexOf(" contained in type", StringComparison.Ordinal);
        return (typeName < 0 ? message : message[..typeName])
            .Replace("The JSON property", "the name", StringComparison.Ordinal)
            .Replace("could not be mapped to any .NET member", "is not known here", StringComparison.Ordinal)
            .TrimEnd('.');
    }
}
