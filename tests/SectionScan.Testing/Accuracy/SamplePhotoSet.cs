using SectionScan.Imaging.Lenses;
using SectionScan.Metrology.Cameras;
using SectionScan.Testing.Truth;

namespace SectionScan.Testing.Accuracy;

/// <summary>The sample photographs as an accuracy test uses them.</summary>
public static class SamplePhotoSet
{
    private static readonly Lazy<LensProfile> Made = new(() => LensProfiler.Make(
        [.. Enumerable.Range(1, 10).Select(n => SamplePhotos.PhotoPath(FormattableString.Invariant($"c{n:00}")))], 1, 1).ValueOrThrow().Profile);

    /// <summary>The photos of flat-backed slices and of openings; p09, half a mould, is judged by its own tests.</summary>
    public static IReadOnlyList<string> Names { get; } = ["p01", "p02", "p03", "p04", "p05", "p06", "p07", "p08", "p10"];

    /// <summary>The profile of the phone that took them, from c01 to c10.</summary>
    public static LensProfile Profile => Made.Value;

    /// <summary>Digitises and judges one of them.</summary>
    public static PhotoVerdict Judge(string name, bool hasProfile, bool wantsPicture = false)
    {
        var truth = SamplePhotos.TruthOf(name);
        var settings = PhotoJudge.Told(truth) with { Lens = hasProfile ? Profile : null, WantsPicture = wantsPicture };
        return PhotoJudge.Judge(SamplePhotos.PhotoPath(name), truth with { Name = name }, settings);
    }
}
