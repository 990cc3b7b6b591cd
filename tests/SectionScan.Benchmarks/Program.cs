using BenchmarkDotNet.Running;
using SectionScan.Benchmarks;

// `memory digitise` and `memory baseline` measure a fresh process; everything else is for the benchmarks.
if (args is ["memory", ..])
{
    return PeakMemory.Print(args.Length > 1 ? args[1] : "digitise");
}

BenchmarkSwitcher.FromAssembly(typeof(DigitiseBenchmarks).Assembly).Run(args);
return 0;
