using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace SectionScan.Benchmarks;

/// <summary>Few and short runs in the process itself: enough for ratios, and nothing has to be built at run time.</summary>
internal sealed class InThisProcess : ManualConfig
{
    public InThisProcess() => AddJob(Job.Default.WithToolchain(InProcessEmitToolchain.Instance).WithWarmupCount(2).WithIterationCount(7));
}
