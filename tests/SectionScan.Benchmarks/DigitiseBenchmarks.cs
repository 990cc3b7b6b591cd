using BenchmarkDotNet.Attributes;
using OpenCvSharp;
using OpenCvSharp.Aruco;
using SectionScan.Imaging.Digitising;
using SectionScan.Imaging.Lenses;
using SectionScan.Metrology.Cameras;
using SectionScan.Testing.Truth;

namespace SectionScan.Benchmarks;

/// <summary>Digitising p01, four slices, with a lens profile. The baseline is what nobody who measures on a printed board can save:
/// OpenCV's decoding of the JPEG and its detection of the ChArUco board in the same photo.</summary>
[Config(typeof(InThisProcess))]
[MemoryDiagnoser]
public class DigitiseBenchmarks
{
    private readonly string photo = SamplePhotos.PhotoPath("p01");
    private byte[] jpeg = [];
    private LensProfile lens = null!;

    [GlobalSetup]
    public void Setup()
    {
        Load();
        lens = LensProfiler.Make([.. Enumerable.Range(1, 10).Select(i => SamplePhotos.PhotoPath($"c{i:00}"))], 1, 1).ValueOrThrow().Profile;
    }

    [Benchmark(Baseline = true)]
    public int DecodeAndDetectBoard()
    {
        using var colour = Cv2.ImDecode(jpeg, ImreadModes.Color);
        using var grey = colour.CvtColor(ColorConversionCodes.BGR2GRAY);
        using var dictionary = CvAruco.GetPredefinedDictionary(PredefinedDictionaryType.Dict5X5_100);
        using var board = new CharucoBoard(13, 9, 20, 15, dictionary);
        using var detector = new CharucoDetector(board);
        detector.DetectBoard(grey, out _, out var ids, out _, out _);
        return ids.Length;
    }

    [Benchmark]
    public int Digitise() => Digitised(new() { ThicknessMm = 6, Lens = lens });

    [Benchmark]
    public int DigitiseWithoutProfile() => Digitised(new() { ThicknessMm = 6 });

    [Benchmark]
    public int DigitiseAndDrawOnThePhoto() => Digitised(new() { ThicknessMm = 6, Lens = lens, WantsPicture = true });

    /// <summary>The part of the setup that does not need much memory itself.</summary>
    internal void Load() => jpeg = File.ReadAllBytes(photo);

    private int Digitised(DigitiseSettings settings) => Digitiser.Digitise(photo, settings).ValueOrThrow().Sections.Count;
}
