using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Checks;

/// <summary>Measures what the rules judge, once the camera is known.</summary>
internal static class PhotoJudgement
{
    /// <summary>All respects of the photo as a whole.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="sighting">The target as found.</param>
    /// <param name="fit">The camera.</param>
    /// <param name="corners">Corners that the camera was fitted to.</param>
    /// <param name="ratio">The print ratios.</param>
    /// <param name="thicknessMm">Height of the faces, mm.</param>
    public static IReadOnlyList<CheckItem> Of(
        Photo photo, TargetSighting sighting, CameraFit fit, int corners, (double X, double Y) ratio, double thicknessMm)
    {
        var (target, camera) = (sighting.Target, fit.Camera);
        var middle = new TargetPoint(target.WidthMm * ratio.X / 2, target.HeightMm * ratio.Y / 2);
        var pixel = camera.MillimetresPerPixel(middle, 0);
        return
        [
            CheckRules.Corners(target.Kind, corners, target.Saddles.Count),
            CheckRules.Fit(fit.RmsPx),
            CheckRules.Sharpness(TargetBlur.Px(photo.Grey, sighting), pixel),
            CheckRules.PixelSize(pixel),
            CheckRules.FrameShare(target.Kind, FrameShare(photo, camera, target, ratio)),
            .. CheckRules.Light(PaperLight.Of(photo.Colour, camera, sighting, ratio)),
            CheckRules.Tilt(camera.Tilt.Degrees),
            CheckRules.Height(fit, thicknessMm),
        ];
    }

    /// <summary>Why no camera fits: a blurred target often does not, and the blur is what the person can do something about.</summary>
    public static Problem BlurOr(Problem problem, Photo photo, TargetSighting sighting, string where)
    {
        var blur = CheckRules.Sharpness(TargetBlur.Px(photo.Grey, sighting), 0);
        return blur.Verdict == CheckVerdict.Poor ? CheckProblems.Refused(where, blur) : problem;
    }

    private static double FrameShare(Photo photo, Camera camera, ScaleTarget target, (double X, double Y) ratio)
    {
        var (width, height) = (target.WidthMm * ratio.X, target.HeightMm * ratio.Y);
        TargetPoint[] board = [new(0, 0), new(width, 0), new(width, height), new(0, height)];
        var seen = Array.ConvertAll(board, p => camera.Project(p, 0));
        double twice = 0;
        for (var i = 0; i < seen.Length; i++)
        {
            var (a, b) = (seen[i], seen[(i + 1) % seen.Length]);
            twice += (a.X * b.Y) - (b.X * a.Y);
        }

        return Math.Abs(twice) / 2 / ((double)photo.Colour.Width * photo.Colour.Height);
    }
}
