using OpenCvSharp;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Targets;

/// <summary>From a target's corners to the camera.</summary>
internal static class CameraFinder
{
    // What is left after the fit, px: more means a target that is not flat, or corners that are not.
    private const double MostRmsPx = 1.2;
    private const double OutlierFactor = 5;

    /// <summary>Fits the camera; corners that do not agree with the others are left out.</summary>
    /// <param name="sighting">The target as found.</param>
    /// <param name="prior">What is known of the lens.</param>
    /// <param name="printRatioX">Measured over nominal across.</param>
    /// <param name="printRatioY">Measured over nominal up.</param>
    /// <param name="where">The photo, for messages.</param>
    public static Result<(CameraFit Fit, int Corners)> Find(
        TargetSighting sighting, LensPrior prior, double printRatioX, double printRatioY, string where) =>
        Find(AtTrueSize(sighting.Points, printRatioX, printRatioY), sighting.Target.Kind, prior, where);

    /// <summary>Fits the camera to points of true size; points that do not agree with the others are left out.</summary>
    /// <param name="points">The points.</param>
    /// <param name="kind">What they belong to, for messages.</param>
    /// <param name="prior">What is known of the lens.</param>
    /// <param name="where">The photo, for messages.</param>
    public static Result<(CameraFit Fit, int Corners)> Find(IReadOnlyList<SightedPoint> points, string kind, LensPrior prior, string where)
    {
        var start = RoughPose(points, prior.Mean);
        var fit = CameraFit.Solve(points, prior, start);
        var limit = OutlierFactor * Math.Max(0.06, MedianError(points, fit.Camera));
        var kept = points.Where(p => ErrorOf(p, fit.Camera) <= limit).ToList();
        if (kept.Count < TargetFinder.LeastCorners)
        {
            return TargetProblems.DoesNotFit(where, kind, fit.RmsPx, MostRmsPx);
        }

        if (kept.Count < points.Count)
        {
            fit = CameraFit.Solve(kept, prior, fit.Camera.Pose);
        }

        return fit.RmsPx > MostRmsPx
            ? TargetProblems.DoesNotFit(where, kind, fit.RmsPx, MostRmsPx)
            : (fit, kept.Count);
    }

    /// <summary>The points with the print's own stretch applied: true millimetres.</summary>
    public static IReadOnlyList<SightedPoint> AtTrueSize(IReadOnlyList<SightedPoint> points, double printRatioX, double printRatioY) =>
        [.. points.Select(p => new SightedPoint(new(p.Target.XMm * printRatioX, p.Target.YMm * printRatioY), p.Pixel))];

    /// <summary>A pose from the flat points and a lens that is about right.</summary>
    public static Pose RoughPose(IReadOnlyList<SightedPoint> points, Lens lens)
    {
        var matrix = new double[,] { { lens.FocalXPx, 0, lens.CentreXPx }, { 0, lens.FocalYPx, lens.CentreYPx }, { 0, 0, 1 } };
        double[] rotation = [0, 0, 0];
        double[] translation = [0, 0, 0];

        // The first method is the better start but knows no exactly square-on view; the other does.
        foreach (var method in new[] { SolvePnPMethod.IPPE, SolvePnPMethod.Iterative })
        {
            Cv2.SolvePnP(
                points.Select(p => new Point3f((float)p.Target.XMm, (float)p.Target.YMm, 0)),
                points.Select(p => new Point2f((float)p.Pixel.X, (float)p.Pixel.Y)),
                matrix, [lens.K1, lens.K2, lens.P1, lens.P2, lens.K3], ref rotation, ref translation, false, method);
            if (rotation.Concat(translation).All(double.IsFinite))
            {
                break;
            }
        }

        return new(rotation[0], rotation[1], rotation[2], translation[0], translation[1], translation[2]);
    }

    private static double ErrorOf(SightedPoint point, Camera camera) => camera.Project(point.Target, 0).DistanceTo(point.Pixel);

    private static double MedianError(IReadOnlyList<SightedPoint> points, Camera camera)
    {
        var errors = points.Select(p => ErrorOf(p, camera)).Order().ToArray();
        return errors[errors.Length / 2];
    }
}
