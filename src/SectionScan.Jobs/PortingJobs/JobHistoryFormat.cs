using System.Text.Json;
using System.Text.Json.Serialization;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>A job with its history as text: JSON, its schema first.</summary>
internal static class JobHistoryFormat
{
    /// <summary>The longest file that is read.</summary>
    public const long MaximumBytes = 64_000_000;

    /// <summary>The longest file that is written while there are steps to forget: every change writes it anew.</summary>
    public const long UsualBytes = 16_000_000;

    private const string SchemaName = "sectionscan/workbench-job/1";

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    public static string Write(JobHistory history) => JsonSerializer.Serialize(new JobFile<JobHistory>(SchemaName, history), Options) + "\n";

    public static Result<JobHistory> Read(string text, string where) => Read<JobHistory>(text, where);

    /// <summary>The job as it stands, its history skipped.</summary>
    public static Result<PortingJob> ReadPresent(string text, string where) => Read<PresentPart>(text, where).Then<PortingJob>(part => part.Present);

    private static Result<T> Read<T>(string text, string where)
        where T : notnull
    {
        try
        {
            var file = JsonSerializer.Deserialize<JobFile<T>>(text, Options);
            return file?.Schema == SchemaName ? file.History
                : JobProblems.Damaged(where, file is null ? "it is empty" : $"its schema is \"{file.Schema}\"");
        }
        catch (Exception e) when (e is JsonException or NotSupportedException)
        {
            return JobProblems.Damaged(where, e.Message);
        }
    }

    private sealed record JobFile<T>(string Schema, T History);

    private sealed record PresentPart(PortingJob Present);
}
