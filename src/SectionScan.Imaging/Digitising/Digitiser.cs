using SectionScan.Imaging.Checks;
using SectionScan.Imaging.Grounds;
using SectionScan.Imaging.Openings;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Scales;
using SectionScan.Imaging.Slices;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Digitising;

/// <summary>From a photo to true-size outlines: read, find the target, fit the camera, find the objects, measure their edges.</summary>
public static class Digitiser
{
    /// <summary>Digitises one photo.</summary>
    /// <param name="path">The file.</param>
    /// <param name="settings">How.</param>
    /// <returns>The sections, or the one problem that stood in the way of all of them.</returns>
    public static Result<DigitisedPhoto> Digitise(string path, DigitiseSettings settings)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(settings);
        if (!Photo.Read(path).TryGet(out var photo, out var problem))
        {
            return problem;
        }

        using (photo)
        {
            return Digitise(photo, path, settings);
        }
    }

    private static Result<DigitisedPhoto> Digitise(Photo photo, string path, DigitiseSettings settings)
    {
        if (settings.Scale is { } source)
        {
            return PlainGroundDigitiser.Digitise(photo, path, source, settings);
        }

        if (!TargetFinder.Find(photo.Grey, path).TryGet(out var sighting, out var problem))
        {
            return problem;
        }

        var opening = settings.LooksForOpenings ?? sighting.Target == ScaleTarget.Card;
        if (opening != (sighting.Target == ScaleTarget.Card))
        {
            return DigitiseProblems.WrongTarget(path, opening ? "Openings" : "Mould slices", sighting.Target.Kind);
        }

        if (opening && settings.Shrinkage is not null)
        {
            return DigitiseProblems.ShrinkageOfOpening(path);
        }

        if (settings.Gauge is { } study && GaugeUse.Refusal(study, sighting.Target.Kind, settings.PrintRatio, path) is { } unfit)
        {
            return unfit;
        }

        var (width, height) = (photo.Colour.Width, photo.Colour.Height);
        var prior = settings.Lens is null
            ? LensPrior.FromExif(width, height, photo.Focal35Mm)
            : settings.Lens.PriorFor(width, height, path);
        if (!prior.TryGet(out var lens, out problem))
        {
            return problem;
        }

        var ratio = settings.PrintRatio ?? (1, 1);
        if (!CameraFinder.Find(sighting, lens, ratio.X, ratio.Y, path).TryGet(out var found, out problem))
        {
            return PhotoJudgement.BlurOr(problem, photo, sighting, path);
        }

        var thickness = opening ? 0 : settings.ThicknessMm ?? 0;
        if (thickness > 0.5 * found.Fit.Camera.HeightMm)
        {
            return DigitiseProblems.TooThick(path, thickness, found.Fit.Camera.HeightMm);
        }

        var items = PhotoJudgement.Of(photo, sighting, found.Fit, found.Corners, ratio, thickness);
        if (items.FirstOrDefault(i => i.Verdict == CheckVerdict.Poor) is { } poor)
        {
            return CheckProblems.Refused(path, poor);
        }

        var scene = new Scene(
            photo, path, PrintedScale.Of(found.Fit, sighting.Target, found.Corners, settings.PrintRatio), opening, thickness, settings,
            CheckRules.Cautions(items));
        return opening ? Openings(scene, sighting.Target, ratio) : Slices(scene, sighting.Target, ratio);
    }

    private static Result<DigitisedPhoto> Slices(Scene scene, ScaleTarget target, (double X, double Y) printRatio)
    {
        var camera = scene.Scale.Camera;
        var window = target.BlankWindow!;
        var (stepX, stepY) = (target.SquareMm * printRatio.X, target.SquareMm * printRatio.Y);

        // Two things that do not wait for each other.
        var look = Task.Run(() => StationTagFinder.Find(
            scene.Photo.Grey, camera, new(window.FirstColumn * stepX, window.FirstRow * stepY),
            new((window.LastColumn + 1) * stepX, (window.LastRow + 1) * stepY)));
        var ratio = PaperRatio.Of(scene.Photo.Colour, camera, target, printRatio.X, printRatio.Y);
        var tags = look.GetAwaiter().GetResult();
        var seeds = scene.Settings.Seeds.Select(seed => camera.BackProject(
            StoredPixels.FromDisplayed(seed, scene.Photo.QuarterTurns, scene.Photo.Colour.Width, scene.Photo.Colour.Height), 0)).ToList();
        var rough = SliceFinder.Find(ratio, [.. tags.Select(t => t.Footprint())], seeds);
        List<Problem> refused = [.. seeds.Where(seed => !rough.Any(r => r.Holds(seed))).Select(seed => DigitiseProblems.NothingAtSeed(scene.Path, seed))];
        if (rough.Count == 0)
        {
            return refused.Count > 0 ? refused[0] : DigitiseProblems.NoSlices(scene.Path);
        }

        refused.AddRange(rough.Where(r => r.TouchesWindow).Select(r => DigitiseProblems.RunsOff(scene.Path, FaceMeasuring.Middle(r.Rim))));
        var kept = FaceMeasuring.Measure(scene with { Paper = ratio.Paper }, [.. rough.Where(r => !r.TouchesWindow)], 1, refused);
        if (kept.Count == 0)
        {
            return refused[0];
        }

        var matched = TagMatch.Match([.. kept.Select(e => e.Points)], tags);
        var sections = kept.Select((edge, i) => SectionAssembly.Assemble(scene, edge, matched[i])).ToList();
        return FaceMeasuring.Assemble(scene, sections, refused, LostTags(tags, matched));
    }

    private static Result<DigitisedPhoto> Openings(Scene scene, ScaleTarget target, (double X, double Y) printRatio)
    {
        var rough = OpeningFinder.Find(scene.Photo.Colour, scene.Scale.Camera, target, printRatio.X, printRatio.Y);
        if (rough.Count == 0)
        {
            return DigitiseProblems.NoOpenings(scene.Path);
        }

        var refused = rough.Where(r => r.TouchesWindow).Select(r => DigitiseProblems.OpeningRunsOff(scene.Path, FaceMeasuring.Middle(r.Rim))).ToList();
        var kept = FaceMeasuring.Measure(scene, [.. rough.Where(r => !r.TouchesWindow)], -1, refused);
        if (kept.Count == 0)
        {
            return refused[0];
        }

        var sections = kept.Select(edge => SectionAssembly.Assemble(scene, edge, null)).ToList();
        return FaceMeasuring.Assemble(scene, sections, refused, []);
    }

    private static IReadOnlyList<string> LostTags(IReadOnlyList<StationTag> tags, StationTag?[] matched) =>
        [.. tags.Where(t => !matched.Contains(t)).Select(t => FormattableString.Invariant($"Tag {t.Station} lies beside no slice."))];
}
