using BenchmarkDotNet.Attributes;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Sections;

namespace SectionScan.Benchmarks;

/// <summary>One section laid on and compared with many: deviations only, by centroids (the baseline) and by the usual fit. Of 100 000 a
/// thousand are different ones, taken again and again: memory is not what is measured.</summary>
[Config(typeof(InThisProcess))]
public class ManyComparisonsBenchmarks
{
    private readonly Outline reference = SampleSections.Blob(1, 360);
    private Outline[] many = [];

    [Params(1_000, 10_000, 100_000)]
    public int Sections { get; set; }

    [GlobalSetup]
    public void Make()
    {
        Outline[] different = [.. Enumerable.Range(2, 1_000).Select(i => SampleSections.Blob(i, 360))];
        many = [.. Enumerable.Range(0, Sections).Select(i => different[i % different.Length])];
    }

    [Benchmark(Baseline = true)]
    public double Centroids() => Widest(outline => OutlineAlignment.AtCentroids(reference, outline, SimilarityTransform.Identity));

    [Benchmark]
    public double UsualFit() => Widest(outline => OutlineAlignment.Fit(reference, outline, AlignmentChoice.Usual.Rule, SimilarityTransform.Identity));

    private double Widest(Func<Outline, AlignedOutline> lay) =>
        many.Max(outline => OutlineComparison.Samples(reference, lay(outline).Outline).Max(sample => sample.DeviationMm));
}
