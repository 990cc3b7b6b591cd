using BenchmarkDotNet.Attributes;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Likeness;
using SectionScan.Testing.Sections;

namespace SectionScan.Benchmarks;

/// <summary>Searching libraries of made-up sections by shape. The baseline is one plain pass over as many numbers, the least that
/// any exact search can take.</summary>
[Config(typeof(InThisProcess))]
[MemoryDiagnoser]
public class LibrarySearchBenchmarks
{
    private readonly LikenessIndex index = new();
    private ShapeDescriptor query = null!;
    private float[] numbers = [];

    [Params(1_000, 10_000, 100_000)]
    public int Sections { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        for (var i = 0; i < Sections; i++)
        {
            index.Put(i, ShapeDescriptor.Of(SampleSections.Blob(i, 60)));
        }

        query = ShapeDescriptor.Of(SampleSections.Blob(1_000_000));
        numbers = new float[Sections * ShapeDescriptor.Length];
    }

    [Benchmark(Baseline = true)]
    public float OnePass()
    {
        var sum = 0f;
        foreach (var number in numbers)
        {
            sum += number;
        }

        return sum;
    }

    [Benchmark]
    public object AsPlaced() => index.Nearest(query, 10, new());

    [Benchmark]
    public object ScaledAndMirrored() => index.Nearest(query, 10, new(MayScale: true, MayMirror: true));

    [Benchmark]
    public object Turned() => index.Nearest(query, 10, new(MayTurn: true));

    [Benchmark]
    public object ScaledMirroredAndTurned() => index.Nearest(query, 10, new(MayScale: true, MayMirror: true, MayTurn: true));

    /// <summary>What a person waits for who asks for the nearest ten and sees each of them compared in full.</summary>
    [Benchmark]
    public double NearestTenCompared()
    {
        var asked = SampleSections.Blob(1_000_000, 360);
        return index.Nearest(query, 10, new()).Sum(found =>
            OutlineComparison.Compare(SampleSections.Blob((int)found.Id, 360), asked, new(AlignmentMethod.BestFit)).RmsDeviationMm);
    }
}
