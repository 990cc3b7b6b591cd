using SectionScan.Testing.Accuracy;
using SectionScan.Testing.Rendering;

namespace SectionScan.Accuracy.Report;

/// <summary>The tables of errors.</summary>
internal static class AccuracyReport
{
    private const int CasesAFamily = 2;

    public static void OfSamplePhotos(ReportOptions options)
    {
        foreach (var hasProfile in options.Lenses)
        {
            var verdicts = SamplePhotoSet.Names.Select(name =>
                Kept(options, SamplePhotoSet.Judge(name, hasProfile, options.PicturesIn is not null), hasProfile)).ToArray();
            Console.WriteLine($"SAMPLE PHOTOS {Named(hasProfile)}\n{AccuracyTable.Sections(verdicts)}");
            Console.WriteLine(AccuracyTable.Summary($"Sample photos {Named(hasProfile)}", verdicts));
        }
    }

    public static void OfScenes(ReportOptions options)
    {
        using var scenes = new RenderedScenes(options.KeptIn);
        var all = new Dictionary<bool, List<PhotoVerdict>> { [true] = [], [false] = [] };
        foreach (var family in options.Families)
        {
            var drawn = Enumerable.Range(options.First, options.Cases ?? CasesAFamily).Select(seed => Sized(SceneSampler.SceneFor(family, seed), options.Scale));
            var photos = drawn.ToArray();
            foreach (var hasProfile in options.Lenses)
            {
                var verdicts = photos.Select(scene =>
                    Kept(options, scenes.Judge(scene, hasProfile, options.PicturesIn is not null), hasProfile)).ToArray();
                all[hasProfile].AddRange(verdicts);
                Console.WriteLine($"{family} {Named(hasProfile)}\n{AccuracyTable.Sections(verdicts)}");
                Console.WriteLine(AccuracyTable.Summary($"{family} {Named(hasProfile)}", verdicts));
            }
        }

        foreach (var hasProfile in options.Lenses)
        {
            Console.WriteLine(AccuracyTable.Summary($"All families {Named(hasProfile)}", all[hasProfile]));
        }
    }

    private static PhotoScene Sized(PhotoScene scene, double scale) => scale == 1 ? scene : scene.Resized(scale);

    private static string Named(bool hasProfile) => hasProfile ? "with the lens profile" : "without a profile";

    private static PhotoVerdict Kept(ReportOptions options, PhotoVerdict verdict, bool hasProfile)
    {
        if (options.PicturesIn is { } folder && verdict.Photo?.AnnotatedJpeg is { } picture)
        {
            var name = $"{verdict.Name.Replace(' ', '-')}-{(hasProfile ? "profile" : "none")}.jpg";
            File.WriteAllBytes(Path.Combine(folder, name), picture);
        }

        // The picture is written; thousands of them need not stay in memory.
        return verdict with { Photo = verdict.Photo is { } photo ? photo with { AnnotatedJpeg = null } : null };
    }
}
