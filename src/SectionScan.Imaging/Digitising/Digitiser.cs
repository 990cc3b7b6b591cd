using SectionScan.Imaging.Checks;
using SectionScan.Imaging.Edges;
using SectionScan.Imaging.Grounds;
using SectionScan.Imaging.Openings;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Slices;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Capture;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Digitising;

/// <summary>From a photo to true-size outlines: read, find the target, fit the camera, find the objects, measure their edges.</summary>
public static class Digitiser
{
    // A face whose edge is unclear over more than this share is refused.
    private const double MostWeakShare = 0.35;

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
        if (!TargetFinder.Find(photo.Grey, path).TryGet(out var sighting, out var problem))
        {
            return problem;
        }

        var opening = settings.LooksForOpenings ?? sighting.Target == ScaleTarget.Card;
        if (opening != (sighting.Target == ScaleTarget.Card))
        {
            return DigitiseProblems.WrongTarget(path, opening ? "Openings" : "Mould slices", sighting.Target.Kind);
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

        var scene = new Scene(photo, path, sighting.Target, found.Fit, ratio, thickness, settings)
        {
            Cautions = [.. items.Where(i => i.Verdict == CheckVerdict.Fair).Select(i => $"{i.Finding} {i.Remedy}")],
        };
        var target = new TargetFit(
            sighting.Target.Kind, found.Corners, sighting.Target.Saddles.Count, found.Fit.RmsPx, ratio.X, ratio.Y);
        return opening ? Openings(scene, target) : Slices(scene, target);
    }

    private static Result<DigitisedPhoto> Slices(Scene scene, TargetFit target)
    {
        var camera = scene.Fit.Camera;
        var window = scene.Target.BlankWindow!;
        var (stepX, stepY) = (scene.Target.SquareMm * scene.Ratio.X, scene.Target.SquareMm * scene.Ratio.Y);
        var tags = StationTagFinder.Find(
            scene.Photo.Grey, camera, new(window.FirstColumn * stepX, window.FirstRow * stepY),
            new((window.LastColumn + 1) * stepX, (window.LastRow + 1) * stepY));
        var ratio = PaperRatio.Of(scene.Photo.Colour, camera, scene.Target, scene.Ratio.X, scene.Ratio.Y);
        var rough = SliceFinder.Find(ratio, [.. tags.Select(t => t.Footprint())]);
        if (rough.Count == 0)
        {
            return DigitiseProblems.NoSlices(scene.Path);
        }

        var refused = rough.Where(r => r.TouchesWindow).Select(r => DigitiseProblems.RunsOff(scene.Path, Middle(r.Rim))).ToList();
        var edges = Measure(scene, [.. rough.Where(r => !r.TouchesWindow)], 1);
        var kept = Keep(scene, edges, refused);
        if (kept.Count == 0)
        {
            return refused[0];
        }

        var matched = TagMatch.Match([.. kept.Select(e => e.Points)], tags);
        var sections = kept.Select((edge, i) => SectionAssembly.Assemble(scene, edge, matched[i])).ToList();
        return Assemble(scene, target, sections, refused, LostTags(tags, matched));
    }

    private static Result<DigitisedPhoto> Openings(Scene scene, TargetFit target)
    {
        var rough = OpeningFinder.Find(scene.Photo.Colour, scene.Fit.Camera, scene.Target, scene.Ratio.X, scene.Ratio.Y);
        if (rough.Count == 0)
        {
            return DigitiseProblems.NoOpenings(scene.Path);
        }

        var refused = rough.Where(r => r.TouchesWindow).Select(r => DigitiseProblems.OpeningRunsOff(scene.Path, Middle(r.Rim))).ToList();
        var edges = Measure(scene, [.. rough.Where(r => !r.TouchesWindow)], -1);
        var kept = Keep(scene, edges, refused);
        if (kept.Count == 0)
        {
            return refused[0];
        }

        var sections = kept.Select(edge => SectionAssembly.Assemble(scene, edge, null)).ToList();
        return Assemble(scene, target, sections, refused, []);
    }

    private static FaceEdge[] Measure(Scene scene, RoughSlice[] rough, int direction)
    {
        var camera = scene.Fit.Camera;
        var edges = new FaceEdge[rough.Length];
        Parallel.For(0, rough.Length, i =>
        {
            var sampler = new ProfileSampler(scene.Photo.Colour, scene.Photo.Grey, camera, scene.ThicknessMm);
            TargetPoint[] lifted = [.. rough[i].Rim.Select(p => camera.BackProject(camera.Project(p, 0), scene.ThicknessMm))];
            edges[i] = FaceOutliner.Measure(sampler, lifted, direction);
        });
        return edges;
    }

    private static List<FaceEdge> Keep(Scene scene, FaceEdge[] edges, List<Problem> refused)
    {
        var kept = new List<FaceEdge>();
        foreach (var edge in edges)
        {
            var sharpness = CheckRules.Sharpness(edge.BlurMm / edge.PixelMm, edge.PixelMm);
            if (sharpness.Verdict == CheckVerdict.Poor)
            {
                refused.Add(CheckProblems.Refused(scene.Path, sharpness));
            }
            else if (edge.WeakShare > MostWeakShare)
            {
                refused.Add(DigitiseProblems.EdgeUnclear(scene.Path, Middle(edge.Points), edge.WeakShare));
            }
            else
            {
                kept.Add(edge);
            }
        }

        return kept;
    }

    private static Result<DigitisedPhoto> Assemble(
        Scene scene, TargetFit target, List<Result<DigitisedSection>> sections, List<Problem> refused, IReadOnlyList<string> warnings)
    {
        var good = new List<DigitisedSection>();
        foreach (var section in sections)
        {
            if (section.TryGet(out var done, out var problem))
            {
                good.Add(done);
            }
            else
            {
                refused.Add(problem);
            }
        }

        if (good.Count == 0)
        {
            return refused[0];
        }

        var fit = scene.Fit;
        var facts = new CameraFacts(
            fit.Source, fit.Camera.Lens.FocalXPx, fit.Camera.HeightMm, fit.HeightStandardUncertaintyMm, fit.Camera.Tilt.Degrees,
            fit.Camera.Lens, fit.Camera.Pose);
        IReadOnlyList<DigitisedSection> ordered =
            [.. good.OrderBy(s => s.Station ?? int.MaxValue).ThenBy(s => s.Placement.Origin.XMm)];
        return new DigitisedPhoto(scene.Photo.Facts, target, facts, ordered, [.. PhotoWarnings(scene), .. scene.Cautions, .. warnings], refused,
            scene.Settings.WantsPicture ? OutlinePicture.Draw(scene.Photo, ordered) : null);
    }

    private static IEnumerable<string> PhotoWarnings(Scene scene)
    {
        if (scene.Settings.PrintRatio is null)
        {
            yield return "The print was not checked: measure the check bars with a calliper and give --print-ratio X,Y; until then 0.15 % in each direction is allowed for.";
        }

        if (!scene.IsOpening && scene.Settings.ThicknessMm is null)
        {
            yield return "The thickness of the slices was not told, so they are taken for flat; a slice of 6 mm comes out about 5 % too large in area. Give --thickness MM.";
        }
    }

    private static IReadOnlyList<string> LostTags(IReadOnlyList<StationTag> tags, StationTag?[] matched) =>
        [.. tags.Where(t => !matched.Contains(t)).Select(t => FormattableString.Invariant($"Tag {t.Station} lies beside no slice."))];

    private static TargetPoint Middle(IReadOnlyList<TargetPoint> points) => new(points.Average(p => p.XMm), points.Average(p => p.YMm));
}
