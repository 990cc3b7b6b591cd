using OpenCvSharp;
using SectionScan.Metrology.Cameras;
using SectionScan.Testing.Rendering;
using SectionScan.Testing.Truth;

namespace SectionScan.Imaging.Tests.Checks;

/// <summary>Photographs that are fair or poor for one reason each, made from the samples or rendered.</summary>
internal static class SpoiltPhotos
{
    /// <summary>Makes the photo that a case is named for and gives its path in the folder.</summary>
    public static string Make(string name, string folder) => name switch
    {
        "a little blurred" => Changed(folder, photo => photo.GaussianBlur(new Size(0, 0), 2.5)),
        "blurred" => Changed(folder, photo => photo.GaussianBlur(new Size(0, 0), 6)),
        "overexposed" => Changed(folder, photo => photo * 1.5),
        "overexposed on one side" => Changed(folder, photo => Shaded(photo, across => across < 0.3 ? 1.5 : 1)),
        "dark" => Changed(folder, photo => photo * 0.4),
        "nearly black" => Changed(folder, photo => photo * 0.17),
        "black cut off" => Changed(folder, photo => photo - new Scalar(75, 75, 75)),
        "half size" => Changed(folder, photo => photo.Resize(default, 0.5, 0.5, InterpolationFlags.Area)),
        "quarter size" => Changed(folder, photo => photo.Resize(default, 0.25, 0.25, InterpolationFlags.Area)),
        "dark on one side" => Changed(folder, photo => Shaded(photo, across => 1 - (0.5 * across))),
        "nearly black on one side" => Changed(folder, photo => Shaded(photo, across => 1 - (0.8 * across))),
        "half covered" => Changed(folder, Covered),
        "wavy" => Changed(folder, photo => Waved(photo, 1.1)),
        "very wavy" => Changed(folder, photo => Waved(photo, 6)),
        "all but the left border covered" => Changed(folder, photo => OnlySeen(photo, 65, 200)),
        "all but one corner covered" => Changed(folder, photo => OnlySeen(photo, 75, 65)),
        "far away" => Changed(folder, photo => photo.CopyMakeBorder(1300, 1300, 1700, 1700, BorderTypes.Constant, new Scalar(90, 90, 90))),
        "tilted by 32 degrees" => Tilted(folder, 32),
        "tilted by 54 degrees" => Tilted(folder, 54),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such case."),
    };

    private static string Changed(string folder, Func<Mat, Mat> change)
    {
        using var photo = Cv2.ImRead(SamplePhotos.PhotoPath("p01"), ImreadModes.Color | ImreadModes.IgnoreOrientation);
        using var changed = change(photo);
        var path = Path.Combine(folder, "spoilt.png");
        Assert.True(Cv2.ImWrite(path, changed, new ImageEncodingParam(ImwriteFlags.PngCompression, 1)));
        return path;
    }

    /// <summary>Stored values times a factor that goes from left (0) to right (1).</summary>
    private static Mat Shaded(Mat photo, Func<double, double> factor)
    {
        var shaded = photo.Clone();
        var (width, height) = (photo.Width, photo.Height);
        var pixels = shaded.GetUnsafeGenericIndexer<Vec3b>();
        for (var column = 0; column < width; column++)
        {
            var f = factor(column / (width - 1.0));
            for (var row = 0; row < height; row++)
            {
                var p = pixels[row, column];
                pixels[row, column] = new(Stored(f * p.Item0), Stored(f * p.Item1), Stored(f * p.Item2));
            }
        }

        return shaded;

        static byte Stored(double value) => (byte)Math.Min(255, Math.Round(value));
    }

    private static Mat Covered(Mat photo)
    {
        // Most of the sheet's left, top and bottom borders.
        var covered = photo.Clone();
        var truth = SamplePhotos.TruthOf("p01");
        foreach (var (left, top, right, bottom) in new[] { (-5, 50, 38, 170), (70, -5, 230, 38), (50, 142, 205, 185) })
        {
            var (from, to) = (truth.Camera.Project(new(left, top), 0), truth.Camera.Project(new(right, bottom), 0));
            Cv2.Rectangle(covered, new Point(from.X, from.Y), new Point(to.X, to.Y), new Scalar(60, 90, 60), -1);
        }

        return covered;
    }

    /// <summary>The part of the sheet up to x and y in mm, grey elsewhere.</summary>
    private static Mat OnlySeen(Mat photo, double xMm, double yMm)
    {
        var truth = SamplePhotos.TruthOf("p01");
        using var mask = new Mat(photo.Size(), MatType.CV_8UC1, new Scalar(255));
        Point[] seen =
        [
            .. new Metrology.Frames.TargetPoint[] { new(-30, -30), new(xMm, -30), new(xMm, yMm), new(-30, yMm) }
                .Select(p => truth.Camera.Project(p, 0)).Select(p => new Point(p.X, p.Y)),
        ];
        Cv2.FillConvexPoly(mask, seen, new Scalar(0));
        var covered = photo.Clone();
        covered.SetTo(new Scalar(60, 90, 60), mask);
        return covered;
    }

    private static Mat Waved(Mat photo, double amplitudePx)
    {
        using var mapX = new Mat(photo.Size(), MatType.CV_32FC1);
        using var mapY = new Mat(photo.Size(), MatType.CV_32FC1);
        var (x, y) = (mapX.GetUnsafeGenericIndexer<float>(), mapY.GetUnsafeGenericIndexer<float>());
        var (width, height) = (photo.Width, photo.Height);
        for (var row = 0; row < height; row++)
        {
            for (var column = 0; column < width; column++)
            {
                x[row, column] = (float)(column + (amplitudePx * Math.Sin(column / 150.0)));
                y[row, column] = row;
            }
        }

        var waved = new Mat();
        Cv2.Remap(photo, waved, mapX, mapY, InterpolationFlags.Linear, BorderTypes.Replicate);
        return waved;
    }

    /// <summary>A rendered photo of three megapixels with one slice.</summary>
    private static string Tilted(string folder, double tiltDegrees)
    {
        var camera = new Camera(new(2200, 2200, 1008, 756, 0, 0, 0, 0, 0), CameraPlacing.LookAt(130, 90, 330, tiltDegrees, 20, 3));
        var outline = Enumerable.Range(0, 360)
            .Select(k => new Metrology.Frames.SectionPoint(17 * Math.Cos(Math.Tau * k / 360), 14 * Math.Sin(Math.Tau * k / 360))).ToArray();
        var scene = new PhotoScene(SceneTarget.Sheet, camera, 2016, 1512, 7)
        {
            Slices = [new(1, outline, new(new(130, 90), default), 6, SliceMaterial.Blue)],
            Label = new("Example", "Example phone", 38, "2025:06:14 10:30:00"),
        };
        return PhotoRenderer.Render(scene).SaveTo(folder, "tilted.jpg");
    }
}
