using SectionScan.Testing.Accuracy;
using SectionScan.Testing.Rendering;
using SectionScan.Testing.Truth;

namespace SectionScan.Accuracy.Report;

/// <summary>The tables of errors.</summary>
internal static class AccuracyReport
{
    private const int CasesAFamily = 2;

    // Places that deviate less are what noise and small bubbles do.
    private const double WorthALookMm = 0.12;

    public static void OfSamplePhotos(ReportOptions options)
    {
        foreach (var hasProfile in options.Lenses)
        {
            var judged = SamplePhotoSet.Names.Select(name => Kept(
                options, hasProfile, SamplePhotos.PhotoPath(name), SamplePhotos.TruthOf(name),
                SamplePhotoSet.Judge(name, hasProfile, options.PicturesIn is not null))).ToArray();
            Print("Sample photos", hasProfile, judged);
            PrintParts("Sample photos", hasProfile, judged);
        }
    }

    public static void OfScenes(ReportOptions options)
    {
        using var scenes = new RenderedScenes(options.KeptIn);
        var all = new Dictionary<bool, List<Judged>> { [true] = [], [false] = [] };
        foreach (var (family, draw) in Drawn(options))
        {
            var photos = Enumerable.Range(options.First, options.Cases ?? CasesAFamily).Select(draw)
                .Select(scene => options.Scale == 1 ? scene : scene.Resized(options.Scale)).ToArray();
            foreach (var hasProfile in options.Lenses)
            {
                var judged = photos.Select(scene => Kept(
                    options, hasProfile, scenes.PathOf(scene), PhotoRenderer.TruthOf(scene),
                    scenes.Judge(scene, hasProfile, options.PicturesIn is not null))).ToArray();
                all[hasProfile].AddRange(judged);
                Print(family, hasProfile, judged);
            }
        }

        foreach (var hasProfile in options.Lenses)
        {
            Console.WriteLine(AccuracyTable.Summary($"All families {Named(hasProfile)}", [.. all[hasProfile].Select(j => j.Verdict)]));
            PrintParts("All families", hasProfile, all[hasProfile]);
        }
    }

    private static IEnumerable<(string Name, Func<int, PhotoScene> Draw)> Drawn(ReportOptions options) => options.Table == "mixed"
        ? [("Mixed", SceneSampler.Sample)]
        : options.Families.Select(family => (family.ToString(), new Func<int, PhotoScene>(number => SceneSampler.SceneFor(family, number))));

    private static void Print(string title, bool hasProfile, IReadOnlyCollection<Judged> judged)
    {
        PhotoVerdict[] verdicts = [.. judged.Select(j => j.Verdict)];
        Console.WriteLine($"{title} {Named(hasProfile)}\n{AccuracyTable.Sections(verdicts)}");
        Console.WriteLine(AccuracyTable.Summary($"{title} {Named(hasProfile)}", verdicts));
    }

    private static void PrintParts(string title, bool hasProfile, IReadOnlyCollection<Judged> judged)
    {
        Console.WriteLine(AccuracyTable.Summary(
            $"{title} {Named(hasProfile)}, the edge's part (true camera)", [.. judged.Select(j => ErrorParts.WithTrueCamera(j.Verdict, j.Truth))]));
        Console.WriteLine(AccuracyTable.Summary(
            $"{title} {Named(hasProfile)}, the camera's part (true edge)", [.. judged.Select(j => ErrorParts.WithTrueEdge(j.Verdict, j.Truth))]));
    }

    private static string Named(bool hasProfile) => hasProfile ? "with the lens profile" : "without a profile";

    private static Judged Kept(ReportOptions options, bool hasProfile, string path, PhotoTruth truth, PhotoVerdict verdict)
    {
        if (options.PicturesIn is { } folder)
        {
            var name = Path.Combine(folder, $"{verdict.Name.Replace(' ', '-')}-{(hasProfile ? "profile" : "none")}");
            if (verdict.Photo?.AnnotatedJpeg is { } picture)
            {
                File.WriteAllBytes(name + ".jpg", picture);
            }

            if (DeviationPicture.Draw(path, truth, verdict, WorthALookMm) is { } places)
            {
                File.WriteAllBytes(name + ".worst.png", places);
            }
        }

        // The picture is written; hundreds of them need not stay in memory.
        return new(truth, verdict with { Photo = verdict.Photo is { } photo ? photo with { AnnotatedJpeg = null } : null });
    }

    private sealed record Judged(PhotoTruth Truth, PhotoVerdict Verdict);
}
