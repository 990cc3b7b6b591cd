using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using BenchmarkDotNet.Attributes;
using SectionScan.Archive.Library;
using SectionScan.Archive.Search;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Sections;

namespace SectionScan.Benchmarks;

/// <summary>Searching a library that lies on the disk, once it is open: from the question to the list that a person sees. The baseline is
/// opening it and taking all shapes in, which is done once.</summary>
[Config(typeof(InThisProcess))]
public class LibraryFileBenchmarks
{
    private const int SectionsOfAHead = 200;

    // Filling takes a minute or more, so that one library serves all benchmarks of its size.
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
            library.Import(Archive(path + ".zip")).ValueOrThrow();
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

    // As another program might write it: one import is one transaction, where adding one by one is 100 000.
    private string Archive(string path)
    {
        using var zip = ZipFile.Open(path, ZipArchiveMode.Create);
        var (entries, files) = (new List<object>(), new List<object>());
        for (var i = 0; i < Sections; i++)
        {
            var document = Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Blob(i, 60), i % SectionsOfAHead));
            var sha256 = Convert.ToHexStringLower(SHA256.HashData(document));
            using (var stream = zip.CreateEntry($"documents/{sha256}.json", CompressionLevel.Fastest).Open())
            {
                stream.Write(document);
            }

            files.Add(new { name = $"documents/{sha256}.json", bytes = document.Length, sha256 });
            entries.Add(new
            {
                revisions = new[]
                {
                    new
                    {
                        action = "added", reason = "", at = "2026-01-01T00:00:00.000Z", head = $"Head {i / SectionsOfAHead}", port = "intake 1", station = i % SectionsOfAHead,
                        stage = "", notes = "", tags = Array.Empty<string>(), fields = Array.Empty<string>(), documentSha256 = sha256,
                    },
                },
            });
        }

        using var manifest = zip.CreateEntry("manifest.json", CompressionLevel.Fastest).Open();
        JsonSerializer.Serialize(manifest, new { schema = "sectionscan/archive/1", entries, files });
        return path;
    }
}
