using SectionScan.Imaging.Digitising;
using SectionScan.Imaging.Grounds;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Slices;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Capture;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Checks;

/// <summary>Looks at a photo before anything in it is measured.</summary>
public static class PhotoCheck
{
    /// <summary>Looks at one photo.</summary>
    /// <param name="path">The file.</param>
    /// <param name="settings">Lens, print ratio and thickness, as for digitising.</param>
    /// <returns>The report, also of a photo that is refused; a problem only when the file or the lens profile cannot be used.</returns>
    public static Result<PhotoReport> Look(string path, DigitiseSettings settings)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(settings);
        if (!Photo.Read(path).TryGet(out var photo, out var problem))
        {
            return problem;
        }

        using (photo)
        {
            var (width, height) = (photo.Colour.Width, photo.Colour.Height);
            var prior = settings.Lens is null
                ? LensPrior.FromExif(width, height, photo.Focal35Mm)
                : settings.Lens.PriorFor(width, height, path);
            return prior.TryGet(out var lens, out problem) ? Look(photo, lens, settings) : problem;
        }
    }

    private static PhotoReport Look(Photo photo, LensPrior lens, DigitiseSettings settings)
    {
        if (!TargetFinder.Find(photo.Grey, photo.Facts.File).TryGet(out var sighting, out var problem))
        {
            return Refused(photo, problem);
        }

        var ratio = settings.PrintRatio ?? (1, 1);
        if (!CameraFinder.Find(sighting, lens, ratio.X, ratio.Y, photo.Facts.File).TryGet(out var found, out problem))
        {
            return Refused(photo, PhotoJudgement.BlurOr(problem, photo, sighting, photo.Facts.File));
        }

        var (fit, target) = (found.Fit, sighting.Target);
        var thickness = target == ScaleTarget.Card ? 0 : settings.ThicknessMm ?? 0;
        var items = PhotoJudgement.Of(photo, sighting, fit, found.Corners, ratio, thickness);
        IEnumerable<CheckItem> walls = target == ScaleTarget.Sheet && items.All(i => i.Verdict != CheckVerdict.Poor)
            ? Slices(photo, fit.Camera, target, ratio).Select(slice => Named(CheckRules.Wall(fit.Camera, slice.Middle, thickness), slice))
            : [];
        return new(
            photo.Facts, new(target.Kind, found.Corners, target.Saddles.Count, fit.RmsPx, ratio.X, ratio.Y),
            new CameraFacts(
                fit.Source, fit.Camera.Lens.FocalXPx, fit.Camera.HeightMm, fit.HeightStandardUncertaintyMm, fit.Camera.Tilt.Degrees,
                fit.Camera.Lens, fit.Camera.Pose),
            [.. items, .. walls]);
    }

    private static PhotoReport Refused(Photo photo, Problem problem) => new(
        photo.Facts, null, null, [new("target", problem.Code, CheckVerdict.Poor, 0, "1", 0, 0, problem.What, problem.Remedy)]);

    /// <summary>Where slices lie, about.</summary>
    private static IEnumerable<(TargetPoint Middle, int? Station)> Slices(Photo photo, Camera camera, ScaleTarget target, (double X, double Y) ratio)
    {
        var window = target.BlankWindow!;
        var (stepX, stepY) = (target.SquareMm * ratio.X, target.SquareMm * ratio.Y);
        var tags = StationTagFinder.Find(
            photo.Grey, camera, new(window.FirstColumn * stepX, window.FirstRow * stepY),
            new((window.LastColumn + 1) * stepX, (window.LastRow + 1) * stepY));
        var rims = SliceFinder.Find(PaperRatio.Of(photo.Colour, camera, target, ratio.X, ratio.Y), [.. tags.Select(t => t.Footprint())], [])
            .Select(rough => rough.Rim.ToArray()).ToList();
        return rims.Zip(TagMatch.Match(rims, tags), (rim, tag) => (FaceMeasuring.Middle(rim), tag?.Station))
            .OrderBy(slice => slice.Station ?? int.MaxValue).ThenBy(slice => slice.Item1.XMm);
    }

    private static CheckItem Named(CheckItem item, (TargetPoint Middle, int? Station) slice) => item with
    {
        Name = slice.Station is { } station
            ? FormattableString.Invariant($"{item.Name}, station {station}")
            : FormattableString.Invariant($"{item.Name}, slice near ({slice.Middle.XMm:0}, {slice.Middle.YMm:0}) mm"),
    };
}
