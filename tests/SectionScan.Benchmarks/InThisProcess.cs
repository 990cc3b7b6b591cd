using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace SectionScan.Benchmarks;

/// <summary>Few and short runs in the process itself: enough for ratios, and nothing has to be built at run time.</summary>
internal sealed class InThisProcess : ManualConfig
{
    // Filling a library of 100 000 sections counts as well.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(30);

    public InThisProcess() =>
        AddJob(Job.Default.WithToolchain(new InProcessEmitToolchain(Longest, logOutput: true)).WithWarmupCount(2).WithIterationCount(7));
}
