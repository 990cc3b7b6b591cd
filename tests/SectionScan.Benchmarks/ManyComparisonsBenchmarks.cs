using BenchmarkDotNet.Attributes;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Sections;

namespace SectionScan.Benchmarks;

/// <summary>One section laid on and compared with many, as when a likeness search's finds are gone through: deviations only, by centroids
/// (the baseline) and by the usual fit.</summary>
[Config(typeof(InThisProcess))]
public class ManyComparisonsBenchmarks
{
    private readonly Outline reference = SampleSections.Blob(1, 360);
    private Outline[] many = [];

    [Params(100, 1000)]
    public int Sections { get; set; }

    [GlobalSetup]
    public void Make() => many = [.. Enumerable.Range(2, Sections).Select(i => SampleSections.Blob(i, 360))];

    [Benchmark(Baseline = true)]
    public double Centroids() => Widest(outline => OutlineAlignment.AtCentroids(reference, outline, SimilarityTransform.Identity));

    [Benchmark]
    public double UsualFit() => Widest(outline => OutlineAlignment.Fit(reference, outline, AlignmentChoice.Usual.Rule, SimilarityTransform.Identity));

    private double Widest(Func<Outline, AlignedOutline> lay) =>
        many.Max(outline => OutlineComparison.Samples(reference, lay(outline).Outline).Max(sample => sample.DeviationMm));
}
