using SectionScan.Imaging.Checks;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Scales;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Digitising;

/// <summary>Digitises things on a plain ground, by a scale that is no printed sheet or card.</summary>
internal static class PlainGroundDigitiser
{
    /// <summary>Digitises the photo.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="path">Its file.</param>
    /// <param name="source">Where the scale comes from.</param>
    /// <param name="settings">How.</param>
    public static Result<DigitisedPhoto> Digitise(Photo photo, string path, ScaleSource source, DigitiseSettings settings)
    {
        if (!ScaleFinder.Find(photo, path, source, settings).TryGet(out var scale, out var problem))
        {
            return problem;
        }

        var opening = settings.LooksForOpenings ?? false;
        if (opening && settings.Shrinkage is not null)
        {
            return DigitiseProblems.ShrinkageOfOpening(path);
        }

        var thickness = opening || source is ScanScale ? 0 : settings.ThicknessMm ?? 0;
        if (thickness > 0.5 * scale.Camera.HeightMm)
        {
            return DigitiseProblems.TooThick(path, thickness, scale.Camera.HeightMm);
        }

        var middle = scale.Camera.BackProject(new PixelPoint(photo.Colour.Width / 2.0, photo.Colour.Height / 2.0), 0);
        CheckItem[] items =
            [CheckRules.PixelSize(scale.Camera.MillimetresPerPixel(middle, 0)), CheckRules.Tilt(scale.Camera.Tilt.Degrees)];
        if (items.FirstOrDefault(i => i.Verdict == CheckVerdict.Poor) is { } poor)
        {
            return CheckProblems.Refused(path, poor);
        }

        var rough = PlainGround.Find(photo.Colour, scale, opening);
        if (rough.Count == 0)
        {
            return ScaleProblems.NothingSeen(path);
        }

        var scene = new Scene(photo, path, scale, opening, thickness, settings, CheckRules.Cautions(items));
        var refused = rough.Where(r => r.TouchesWindow).Select(r => ScaleProblems.RunsOff(path, FaceMeasuring.Middle(r.Rim))).ToList();
        var kept = FaceMeasuring.Measure(scene, [.. rough.Where(r => !r.TouchesWindow)], opening ? -1 : 1, refused);
        return kept.Count == 0
            ? refused[0]
            : FaceMeasuring.Assemble(scene, [.. kept.Select(edge => SectionAssembly.Assemble(scene, edge, null))], refused, []);
    }
}
