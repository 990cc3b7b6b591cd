using BenchmarkDotNet.Attributes;
using SectionScan.Archive.Library;
using SectionScan.Archive.Search;
using SectionScan.Metrology.Outlines;
using SectionScan.Porting.Ports;
using SectionScan.Testing.Sections;

namespace SectionScan.Benchmarks;

/// <summary>Searching a library that lies on the disk, once it is open: from the question to the list that a person sees. The baseline is
/// opening it and taking all shapes in, which is done once.</summary>
[Config(typeof(InThisProcess))]
public class LibraryFileBenchmarks
{
    private const int SectionsOfAHead = 200;

    // Filling takes minutes, so that one library serves all benchmarks of its size.
    private static readonly Dictionary<int, string> Filled = [];

    private readonly Outline asked = SampleSections.Blob(1_000_000, 360);
    private SectionLibrary library = null!;

    [Params(1_000, 10_000, 100_000)]
    public int Sections { get; set; }

    /// <summary>Deletes the libraries of this process.</summary>
    public static void Clear()
    {
        foreach (var path in Filled.Values)
        {
            Directory.Delete(Path.GetDirectoryName(path)!, recursive: true);
        }

        Filled.Clear();
    }

    [GlobalSetup]
    public void Open()
    {
        if (Filled.TryGetValue(Sections, out var path))
        {
            library = SectionLibrary.Open(path, TimeProvider.System).ValueOrThrow();
        }
        else
        {
            Filled[Sections] = path = Path.Combine(Directory.CreateTempSubdirectory("sectionscan-").FullName, "library.db");
            library = SectionLibrary.Open(path, TimeProvider.System).ValueOrThrow();
            for (var i = 0; i < Sections; i++)
            {
                var document = SampleSections.Document(SampleSections.Blob(i, 60), i % SectionsOfAHead);
                library.Add(new(new($"Head {i / SectionsOfAHead}", new(PortKind.Intake, 1), i % SectionsOfAHead), document)).ValueOrThrow();
            }
        }

        library.LoadShapes().ValueOrThrow();
    }

    [GlobalCleanup]
    public void Close() => library.Dispose();

    [Benchmark(Baseline = true)]
    public int OpenAndLoad()
    {
        using var opened = SectionLibrary.Open(library.Path, TimeProvider.System).ValueOrThrow();
        return opened.LoadShapes().ValueOrThrow();
    }

    [Benchmark]
    public object NearestTen() => library.FindSimilar(asked, 10, new()).ValueOrThrow();

    [Benchmark]
    public object NearestTenScaledMirroredAndTurned() => library.FindSimilar(asked, 10, new(MayScale: true, MayMirror: true, MayTurn: true)).ValueOrThrow();

    [Benchmark]
    public object ByWords() => library.FindByWords("head 3 station 17").ValueOrThrow();

    [Benchmark]
    public object ByArea() => library.FindByNumbers([new NumberRange("area", 1000, 1001)]).ValueOrThrow();
}
