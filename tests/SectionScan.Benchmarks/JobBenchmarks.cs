using BenchmarkDotNet.Attributes;
using SectionScan.Jobs.WholeJobs;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Ports;
using SectionScan.Testing.Truth;

namespace SectionScan.Benchmarks;

/// <summary>A whole job on the exemplar, from its photos to its report, and how time and memory grow with the number of photos.</summary>
[Config(typeof(InThisProcess))]
[MemoryDiagnoser]
public class JobBenchmarks
{
    private const int StationsOnAPhoto = 4;
    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-").FullName;

    /// <summary>How many photos the job has, four stations on each: one port to each two photos.</summary>
    [Params(1, 2, 4, 8)]
    public int Photos { get; set; } = 2;

    /// <summary>Writes the job beside copies of the exemplar's photos.</summary>
    [GlobalSetup]
    public void Prepare() => WriteJob(folder, Photos);

    /// <summary>Runs it.</summary>
    [Benchmark]
    public int Run() => RunJob.Run(new(Path.Combine(folder, "a.job.json"), Path.Combine(folder, "out"), "benchmark")).ValueOrThrow().Record.Results.Count;

    /// <summary>Leaves nothing behind.</summary>
    [GlobalCleanup]
    public void Clean() => Directory.Delete(folder, recursive: true);

    /// <summary>A job of so many photos in a folder: p01 and p02 in turn.</summary>
    internal static string WriteJob(string folder, int photos)
    {
        var ports = new List<JobPort>();
        foreach (var pair in Enumerable.Range(0, photos).Chunk(2))
        {
            var names = pair.Select(i => FormattableString.Invariant($"photo-{i}.jpg")).ToList();
            foreach (var (name, i) in names.Zip(pair))
            {
                File.Copy(SamplePhotos.PhotoPath(i % 2 == 0 ? "p01" : "p02"), Path.Combine(folder, name), overwrite: true);
            }

            ports.Add(new(FormattableString.Invariant($"port {ports.Count + 1}"), PortKind.Intake)
            {
                Photos = names,
                ThicknessMm = 6,
                Stations = [.. Enumerable.Range(1, names.Count * StationsOnAPhoto).Select(station => new JobStation(station, 15.0 * station))],
            });
        }

        var path = Path.Combine(folder, "a.job.json");
        File.WriteAllText(path, JobDocumentFormat.Write(new(JobDocument.SchemaName, "Bramble 480 twin", "benchmark", ports) { PrintRatio = [1, 1] }));
        return path;
    }
}
