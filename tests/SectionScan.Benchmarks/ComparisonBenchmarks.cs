using BenchmarkDotNet.Attributes;
using NetTopologySuite.Algorithm.Distance;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Sections;

namespace SectionScan.Benchmarks;

/// <summary>Comparing two sections of 720 points. The baseline is NetTopologySuite's discrete Hausdorff distance of the same two: one
/// of the numbers of a comparison, from a general-purpose library.</summary>
[Config(typeof(InThisProcess))]
[MemoryDiagnoser]
public class ComparisonBenchmarks
{
    private readonly Outline reference = SampleSections.Blob(1, 720);
    private readonly Outline measured = SampleSections.Blob(2, 720);

    [Benchmark(Baseline = true)]
    public double DiscreteHausdorff() => DiscreteHausdorffDistance.Distance(reference.ToPolygon(), measured.ToPolygon());

    [Benchmark]
    public object Centroids() => Compare(AlignmentMethod.Centroids);

    [Benchmark]
    public object BestFit() => Compare(AlignmentMethod.BestFit);

    [Benchmark]
    public object BestFitWithRotation() => Compare(AlignmentMethod.BestFitWithRotation);

    [Benchmark]
    public object HeldToMostOfTheOutline() =>
        OutlineComparison.Compare(reference, OutlineAlignment.Fit(reference, measured, AlignmentChoice.Usual.Rule, SimilarityTransform.Identity));

    private ComparisonResult Compare(AlignmentMethod alignment) => OutlineComparison.Compare(reference, measured, new(alignment));
}
