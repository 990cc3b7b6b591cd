using System.Text.Json;
using System.Text.Json.Serialization;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>A job with its history as text: JSON, its schema first.</summary>
internal static class JobHistoryFormat
{
    public const long MaximumBytes = 64_000_000;

    private const string SchemaName = "sectionscan/workbench-job/1";

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    public static string Write(JobHistory history) => JsonSerializer.Serialize(new JobFile(SchemaName, history), Options) + "\n";

    public static Result<JobHistory> Read(string text, string where)
    {
        try
        {
            var file = JsonSerializer.Deserialize<JobFile>(text, Options);
            return file?.Schema == SchemaName ? file.History
                : JobProblems.Damaged(where, file is null ? "it is empty" : $"its schema is \"{file.Schema}\"");
        }
        catch (Exception e) when (e is JsonException or NotSupportedException)
        {
            return JobProblems.Damaged(where, e.Message);
        }
    }

    private sealed record JobFile(string Schema, JobHistory History);
}
