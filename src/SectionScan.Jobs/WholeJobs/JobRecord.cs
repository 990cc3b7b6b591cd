using System.Text.Json;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>What went into a run of a job and what came out, by checksum: the proof that a job run again gives the same.</summary>
/// <param name="Schema">The schema's name.</param>
/// <param name="Program">Name and version of the program.</param>
/// <param name="Inputs">Each file that the job names, and the job itself: name to SHA-256.</param>
/// <param name="Results">Each file written, by its path below the output folder: name to SHA-256.</param>
public sealed record JobRecord(
    string Schema, string Program, IReadOnlyDictionary<string, string> Inputs, IReadOnlyDictionary<string, string> Results)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/job-record/1";

    /// <summary>The record's file name.</summary>
    public const string FileName = "job-record.json";

    private const long MaximumBytes = 4_000_000;

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    /// <summary>Takes the checksums.</summary>
    /// <param name="source">The job.</param>
    /// <param name="outputFolder">The folder that the results lie in.</param>
    /// <param name="results">The results' full paths.</param>
    /// <param name="program">Name and version of the program.</param>
    public static Result<JobRecord> Of(JobFolder source, string outputFolder, IEnumerable<string> results, string program)
    {
        ArgumentNullException.ThrowIfNull(source);
        return Hashed(source.Names().Select(name => (name, source.PathOf(name))).Append((Path.GetFileName(source.Path), source.Path)))
            .Then(inputs => Hashed(results.Select(path => (Path.GetRelativePath(outputFolder, path).Replace('\\', '/'), path)))
                .Then<JobRecord>(made => new JobRecord(SchemaName, program, inputs, made)));
    }

    /// <summary>The record of an earlier run, or null when there is none that can be read.</summary>
    public static JobRecord? Earlier(string outputFolder)
    {
        if (!TextFile.Read(Path.Combine(outputFolder, FileName), MaximumBytes).TryGet(out var text, out _))
        {
            return null;
        }

        try
        {
            var record = JsonSerializer.Deserialize<JobRecord>(text, Options);
            return record?.Schema == SchemaName ? record : null;
        }
        catch (JsonException)
        {
            // Not ours, or cut off: then there is nothing to compare with, and it is replaced.
            return null;
        }
    }

    /// <summary>The record as text.</summary>
    public string Write() => JsonSerializer.Serialize(this, Options) + "\n";

    /// <summary>How this run compares with an earlier one.</summary>
    public JobRepetition Against(JobRecord? earlier)
    {
        if (earlier is null)
        {
            return new(JobRepetitionKind.First, [], []);
        }

        var inputs = Differing(Inputs, earlier.Inputs);
        var results = Differing(Results, earlier.Results);
        var kind = results.Count == 0 ? JobRepetitionKind.Same
            : inputs.Count > 0 || earlier.Program != Program ? JobRepetitionKind.InputsChanged
            : JobRepetitionKind.Differs;
        return new(kind, inputs, results);
    }

    private static List<string> Differing(IReadOnlyDictionary<string, string> now, IReadOnlyDictionary<string, string> before) =>
        [.. now.Keys.Union(before.Keys).Where(name => now.GetValueOrDefault(name) != before.GetValueOrDefault(name)).Order(StringComparer.Ordinal)];

    private static Result<SortedDictionary<string, string>> Hashed(IEnumerable<(string Name, string Path)> files)
    {
        var hashes = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, path) in files)
        {
            if (!TextFile.Sha256(path).TryGet(out var hash, out var problem))
            {
                return problem;
            }

            hashes[name] = hash;
        }

        return hashes;
    }
}
