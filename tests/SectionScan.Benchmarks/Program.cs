using BenchmarkDotNet.Running;
using SectionScan.Benchmarks;

// `memory digitise`, `memory job 4` and `memory baseline` measure a fresh process; everything else is for the benchmarks.
if (args is ["memory", ..])
{
    return PeakMemory.Print(args.Length > 1 ? args[1] : "digitise", args.Length > 2 ? int.Parse(args[2], System.Globalization.CultureInfo.InvariantCulture) : 2);
}

// `workbench` measures how long a person waits at the workbench, in a real browser.
if (args is ["workbench"])
{
    return await WorkbenchTimings.PrintAsync();
}

BenchmarkSwitcher.FromAssembly(typeof(DigitiseBenchmarks).Assembly).Run(args);
LibraryFileBenchmarks.Clear();
return 0;
