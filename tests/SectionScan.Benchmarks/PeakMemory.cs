using System.Globalization;

namespace SectionScan.Benchmarks;

/// <summary>The most memory that a task needs, measured on a process that does nothing else: what the system counts, native memory
/// included, which no counter of the runtime sees.</summary>
internal static class PeakMemory
{
    /// <summary>Runs one task and prints the process's peak before and after it.</summary>
    /// <param name="task">digitise, job for a whole job, or baseline for decoding and board detection alone.</param>
    /// <param name="photos">How many photos the job has.</param>
    /// <returns>0, or 2 for an unknown task, 1 where the system keeps no such count.</returns>
    public static int Print(string task, int photos = 2)
    {
        if (!File.Exists("/proc/self/status"))
        {
            Console.Error.WriteLine("The peak is read from /proc/self/status, which only Linux has.");
            return 1;
        }

        var benchmarks = new DigitiseBenchmarks();
        benchmarks.Load();
        Func<int>? run = task switch
        {
            "digitise" => benchmarks.DigitiseWithoutProfile,
            "job" => () => RunJob(photos),
            "baseline" => benchmarks.DecodeAndDetectBoard,
            _ => null,
        };
        if (run is null)
        {
            Console.Error.WriteLine("Give digitise, job (with a number of photos) or baseline.");
            return 2;
        }

        var before = PeakMb();
        run();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"{task}: peak resident memory {PeakMb():0} MB ({before:0} MB before the first photo)"));
        return 0;
    }

    private static int RunJob(int photos)
    {
        var folder = Directory.CreateTempSubdirectory("sectionscan-").FullName;
        try
        {
            var job = JobBenchmarks.WriteJob(folder, photos);
            return Jobs.WholeJobs.RunJob.Run(new(job, Path.Combine(folder, "out"), "benchmark")).ValueOrThrow().Record.Results.Count;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // proc(5): VmHWM, the peak resident set size, in units of 1024 bytes.
    private static double PeakMb()
    {
        var line = File.ReadLines("/proc/self/status").First(each => each.StartsWith("VmHWM:", StringComparison.Ordinal));
        return double.Parse(line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) * 1024 / 1e6;
    }
}
