using SectionScan.Imaging.Checks;
using SectionScan.Imaging.Edges;
using SectionScan.Imaging.Scales;
using SectionScan.Imaging.Slices;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Digitising;

/// <summary>From places where faces were found to sections: the same for every source of scale.</summary>
internal static class FaceMeasuring
{
    // A face whose edge is unclear over more than this share is refused; so is one that strays this far from its fair course over so much.
    private const double MostWeakShare = 0.35;
    private const double MostStrayShare = 0.3;
    private const double StrayMm = 0.5;

    // An outline shorter than round the smallest face that is looked for has shrunk onto a mark within the face.
    private const double ShortestOutlineMm = 20;

    /// <summary>Measures the edges of all faces.</summary>
    /// <param name="scene">The scene.</param>
    /// <param name="rough">What was found.</param>
    /// <param name="direction">+1 for slices, −1 for openings.</param>
    /// <param name="refused">Gets the problems of faces that cannot be measured.</param>
    public static IReadOnlyList<FaceEdge> Measure(Scene scene, RoughSlice[] rough, int direction, List<Problem> refused)
    {
        var camera = scene.Scale.Camera;
        var edges = new FaceEdge[rough.Length];
        Parallel.For(0, rough.Length, i =>
        {
            var sampler = new ProfileSampler(scene.Photo.Colour, scene.Photo.Grey, camera, scene.ThicknessMm, scene.Paper);
            TargetPoint[] lifted = [.. rough[i].Rim.Select(p => camera.BackProject(camera.Project(p, 0), scene.ThicknessMm))];
            edges[i] = FaceOutliner.Measure(sampler, lifted, direction);
        });
        return Keep(scene, edges, refused);
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
            else if (scene.Settings.KeepsUnclearEdges)
            {
                kept.Add(edge);
            }
            else if (edge.PerimeterMm < ShortestOutlineMm)
            {
                refused.Add(DigitiseProblems.EdgeUnclear(scene.Path, Middle(edge.Points), 1));
            }
            else if (edge.WeakShare > MostWeakShare || edge.ShareOf(EdgeDoubtCause.Faint, StrayMm) > MostStrayShare)
            {
                refused.Add(DigitiseProblems.EdgeUnclear(scene.Path, Middle(edge.Points), Math.Max(edge.WeakShare, edge.ShareOf(EdgeDoubtCause.Faint, StrayMm))));
            }
            else
            {
                kept.Add(edge);
            }
        }

        return kept;
    }

    /// <summary>Puts the photo's sections together.</summary>
    public static Result<DigitisedPhoto> Assemble(
        Scene scene, List<Result<DigitisedSection>> sections, List<Problem> refused, IReadOnlyList<string> warnings)
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

        IReadOnlyList<DigitisedSection> ordered =
            [.. good.OrderBy(s => s.Station ?? int.MaxValue).ThenBy(s => s.Placement.Origin.XMm)];
        return new DigitisedPhoto(scene.Photo.Facts, scene.Scale.Target, scene.Scale.Facts, ordered, [.. PhotoWarnings(scene), .. scene.Scale.Cautions, .. scene.Cautions, .. warnings], refused,
            scene.Settings.WantsPicture ? OutlinePicture.Draw(scene.Photo, ordered) : null);
    }

    private static IEnumerable<string> PhotoWarnings(Scene scene)
    {
        foreach (var warning in scene.Settings.Gauge is { } study ? GaugeUse.Warnings(study, scene) : [])
        {
            yield return warning;
        }

        if (scene.Settings is { PrintRatio: null, Scale: null, Gauge: null })
        {
            yield return "The print was not checked: measure the check bars with a calliper and give --print-ratio X,Y; until then 0.15 % in each direction is allowed for.";
        }

        if (!scene.IsOpening && scene.Settings.ThicknessMm is null && scene.Settings.Scale is not ScanScale)
        {
            yield return "The thickness of the slices was not told, so they are taken for flat; a slice of 6 mm comes out about 5 % too large in area. Give --thickness MM.";
        }
    }

    /// <summary>The middle of a rim.</summary>
    public static TargetPoint Middle(IReadOnlyList<TargetPoint> points) => new(points.Average(p => p.XMm), points.Average(p => p.YMm));
}
