using SectionScan.Testing.Accuracy;
using SectionScan.Testing.Rendering;

namespace SectionScan.Accuracy.Report;

/// <summary>The table of how often the stated intervals hold the truth.</summary>
internal static class CoverageReport
{
    private const int Photos = 100;

    // The standard deviation of 400 draws is known to 1/√800, 3.5 %.
    private const int Draws = 400;

    public static void Print(ReportOptions options)
    {
        using var scenes = new RenderedScenes(options.KeptIn);
        foreach (var hasProfile in options.Lenses)
        {
            var coverage = new CoverageCount(Draws);
            for (var seed = options.First; seed < options.First + (options.Cases ?? Photos); seed++)
            {
                var drawn = SceneSampler.Sample(seed);
                coverage.Add(scenes, options.Scale == 1 ? drawn : drawn.Resized(options.Scale), hasProfile);
            }

            Console.WriteLine($"COVERAGE {(hasProfile ? "with a lens profile" : "without a profile")}, photos at {options.Scale} of full size");
            Console.WriteLine(coverage.Table());
        }
    }
}
