using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Scales;

/// <summary>The scale of places picked in the photo: two points, or the corners of a rectangle.</summary>
internal static class PickedScaling
{
    // A place picked by hand in a photo (common practice, no source).
    private const double PickedUncertaintyPx = 1;

    // A length read from a rule or with a calliper (common practice, no source).
    private const double ReadingUncertaintyMm = 0.1;

    // A phone held flat by eye (common practice, no source).
    private const double UnknownTiltDeg = 5;
    private const double LeastSpanPx = 100;

    // A wrong order or size of a rectangle misses by many percent of its sides; a lens's bending by less than one.
    private const double MostCornerMiss = 0.01;

    /// <summary>Two points: scale without perspective.</summary>
    public static Result<ImageScale> Find(Photo photo, string path, PointsScale points, LensPrior lens)
    {
        if (Outside(photo, path, [points.First, points.Second]) is { } outside)
        {
            return outside;
        }

        var span = points.First.DistanceTo(points.Second);
        if (span < LeastSpanPx)
        {
            return ScaleProblems.TooShort(path, span, LeastSpanPx);
        }

        var (first, second) = (Stored(photo, points.First), Stored(photo, points.Second));
        var direction = Math.Atan2(points.Second.Y - points.First.Y, points.Second.X - points.First.X);
        var tilt = double.DegreesToRadians(UnknownTiltDeg);
        var camera = Over(lens.Mean, 0, 0);
        Camera[] lenses = [.. PlaneCamera.LensesAround(lens).Select(l => Over(l, 0, 0))];
        var relative = Math.Sqrt(Square(Math.Sqrt(2) * PickedUncertaintyPx / span) + Square(ReadingUncertaintyMm / points.DistanceMm));
        return new ImageScale(
            camera, new("points", 2, 2, 0, 1, 1), ImageScale.FactsOf(camera, lens.Source, HeightUncertainty(camera, lenses)),
            [
                new("tilt unknown", [Over(lens.Mean, tilt, 0), Over(lens.Mean, 0, tilt)], IsAssumed: true),
                new("lens and camera height", lenses, IsAssumed: true),
            ],
            new("distance of the points", relative, relative, IsShared: true, IsAssumed: true), [],
            [FormattableString.Invariant(
                $"Two points tell the scale but not how the camera looks down: it is taken to be square on, to {UnknownTiltDeg:0} degrees. Hold it square on, keep the points in the plane of what is measured and on both sides of it, or give four corners (--rectangle).")]);

        Camera Over(Lens with, double aboutX, double aboutY) =>
            PlaneCamera.Over(with, first, second, points.DistanceMm, direction, (aboutX, aboutY));
    }

    /// <summary>Four corners: scale and tilt.</summary>
    public static Result<ImageScale> Find(Photo photo, string path, RectangleScale rectangle, LensPrior lens)
    {
        if (Outside(photo, path, rectangle.Corners) is { } outside)
        {
            return outside;
        }

        if (!IsClockwise(rectangle.Corners))
        {
            return ScaleProblems.NotARectangle(path);
        }

        var shortest = Enumerable.Range(0, 4).Min(i => rectangle.Corners[i].DistanceTo(rectangle.Corners[(i + 1) % 4]));
        if (shortest < LeastSpanPx)
        {
            return ScaleProblems.TooShort(path, shortest, LeastSpanPx);
        }

        var (w, h) = (rectangle.WidthMm, rectangle.HeightMm);
        TargetPoint[] places = [new(0, 0), new(w, 0), new(w, h), new(0, h)];
        SightedPoint[] points = [.. places.Zip(rectangle.Corners, (place, pixel) => new SightedPoint(place, Stored(photo, pixel)))];
        var fit = CameraFit.Solve(points, lens, CameraFinder.RoughPose(points, lens.Mean), PickedUncertaintyPx);
        if (!(fit.RmsPx <= MostCornerMiss * shortest && fit.Camera.HeightMm > 0))
        {
            return ScaleProblems.RectangleDoesNotFit(path, fit.RmsPx, MostCornerMiss * shortest);
        }

        return ImageScale.Fitted(
            fit, new("rectangle", 4, 4, fit.RmsPx, 1, 1),
            new("size of the rectangle", ReadingUncertaintyMm / w, ReadingUncertaintyMm / h, IsShared: false, IsAssumed: true)) with
        {
            Cautions = ["Four corners tell scale and tilt as well as they were picked, to 1 px, and as the rectangle is one, to 0.1 mm. Paper is cut to about 1 mm: measure it, lay it flat, in the plane of what is measured."],
        };
    }

    private static double HeightUncertainty(Camera camera, IEnumerable<Camera> deviations) =>
        Math.Sqrt(deviations.Sum(c => Square(c.HeightMm - camera.HeightMm)));

    private static Problem? Outside(Photo photo, string path, IReadOnlyList<PixelPoint> points)
    {
        var (width, height) = (photo.Facts.WidthPx, photo.Facts.HeightPx);
        foreach (var p in points)
        {
            if (!(p.X >= 0 && p.Y >= 0 && p.X <= width - 1 && p.Y <= height - 1))
            {
                return ScaleProblems.Outside(path, p.X, p.Y, width, height);
            }
        }

        return null;
    }

    private static PixelPoint Stored(Photo photo, PixelPoint displayed) =>
        StoredPixels.FromDisplayed(displayed, photo.QuarterTurns, photo.Colour.Width, photo.Colour.Height);

    /// <summary>True when the corners go round clockwise as displayed (y down), with no dent.</summary>
    private static bool IsClockwise(IReadOnlyList<PixelPoint> corners) => Enumerable.Range(0, 4).All(i =>
    {
        var (a, b, c) = (corners[i], corners[(i + 1) % 4], corners[(i + 2) % 4]);
        return ((b.X - a.X) * (c.Y - b.Y)) - ((b.Y - a.Y) * (c.X - b.X)) > 0;
    });

    private static double Square(double x) => x * x;
}
