using OpenCvSharp;
using SectionScan.Imaging.Grounds;
using SectionScan.Imaging.Slices;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Scales;

/// <summary>Finds things that stand out from a plain ground anywhere in a photo, by light or by tint.</summary>
internal static class PlainGround
{
    private const int MostCells = 1600;
    private const int CoarseCells = 240;
    private const double LeastAreaMm2 = 45;
    private const double LeastSolidity = 0.6;

    // ln(light) and tint by which a thing differs from its ground.
    private const float LeastLight = 0.3f;
    private const float LeastTint = 0.12f;
    private const float DarkOpening = 0.5f;
    private const double ShredMm = 1.2;

    // Coarse cells this near to their surroundings' median count as ground: half of ln(light).
    private const int GroundTolerance = 16;
    private const float StepOfLog = 1f / 30;

    /// <summary>Finds the things.</summary>
    /// <param name="colour">H × W, CV_8UC3.</param>
    /// <param name="scale">The photo's scale.</param>
    /// <param name="darkOnly">True for openings: darker places only.</param>
    public static IReadOnlyList<RoughSlice> Find(Mat colour, ImageScale scale, bool darkOnly)
    {
        var view = ViewOf(colour, scale.Camera);
        using var light = new Mat(view.Rows, view.Columns, MatType.CV_32FC1);
        using var mask = new Mat(view.Rows, view.Columns, MatType.CV_8UC1);
        Compare(view, Ground(view), light, mask, darkOnly);
        foreach (var covered in scale.Covered)
        {
            Cv2.FillConvexPoly(mask, Array.ConvertAll(covered, view.CellOf), new Scalar(0));
        }

        var radius = Math.Max(1, (int)Math.Round(ShredMm / 2 / view.StepMm));
        using var kernel = Cv2.GetStructuringElement(MorphShapes.Ellipse, new Size((2 * radius) + 1, (2 * radius) + 1));
        Cv2.MorphologyEx(mask, mask, MorphTypes.Close, kernel);
        Cv2.MorphologyEx(mask, mask, MorphTypes.Open, kernel);
        Cv2.FindContours(mask, out Point[][] contours, out _, RetrievalModes.External, ContourApproximationModes.ApproxNone);
        return [.. contours.Select(c => Judge(c, light, view)).OfType<RoughSlice>().OrderBy(r => r.Rim.Average(p => p.XMm))];
    }

    private static PlaneView ViewOf(Mat colour, Camera camera)
    {
        var (width, height) = (colour.Width, colour.Height);
        PixelPoint[] corners = [new(0, 0), new(width - 1, 0), new(width - 1, height - 1), new(0, height - 1)];
        var places = Array.ConvertAll(corners, c => camera.BackProject(c, 0));
        var (left, top) = (places.Min(p => p.XMm), places.Min(p => p.YMm));
        var (across, down) = (places.Max(p => p.XMm) - left, places.Max(p => p.YMm) - top);
        var middle = camera.BackProject(new(width / 2.0, height / 2.0), 0);
        return PlaneView.Of(
            colour, camera, new(left, top), across, down, Math.Max(camera.MillimetresPerPixel(middle, 0), Math.Max(across, down) / MostCells));
    }

    /// <summary>The ground's light as a smooth surface: first what is near to the median of wide surroundings, which holds while things
    /// cover less than half of them, then what agrees with the surface.</summary>
    private static GroundModel Ground(PlaneView view)
    {
        var stride = Math.Max(1, (int)Math.Ceiling(Math.Max(view.Rows, view.Columns) / (double)CoarseCells));
        var (rows, columns) = (view.Rows / stride, view.Columns / stride);
        using var coarse = new Mat(rows, columns, MatType.CV_8UC1);
        var level = coarse.GetUnsafeGenericIndexer<byte>();
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var green = view.Green[(row * stride * view.Columns) + (column * stride)];
                level[row, column] = float.IsNaN(green) ? (byte)0 : (byte)Math.Clamp(255 + (green / StepOfLog), 1, 255);
            }
        }

        using var around = new Mat();
        Cv2.MedianBlur(coarse, around, Math.Min(255, (Math.Min(rows, columns) / 4 * 2) + 1));
        var usual = around.GetUnsafeGenericIndexer<byte>();
        var ground = new List<(TargetPoint Place, double Red, double Green, double Blue)>();
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var i = (row * stride * view.Columns) + (column * stride);
                if (level[row, column] > 0 && Math.Abs(level[row, column] - usual[row, column]) < GroundTolerance)
                {
                    ground.Add((view.PlaceOf(column * stride, row * stride), view.Red[i], view.Green[i], view.Blue[i]));
                }
            }
        }

        return GroundModel.Fit(ground, ground.Count, view.Columns * view.StepMm);
    }

    private static void Compare(PlaneView view, GroundModel model, Mat light, Mat mask, bool darkOnly)
    {
        var (ratio, stands) = (light.GetUnsafeGenericIndexer<float>(), mask.GetUnsafeGenericIndexer<byte>());
        Parallel.For(0, view.Rows, row =>
        {
            var (red, green, blue) = (model.AlongRow(view, row, 0), model.AlongRow(view, row, 1), model.AlongRow(view, row, 2));
            for (var column = 0; column < view.Columns; column++)
            {
                var i = (row * view.Columns) + column;
                var (r, g, b) = (view.Red[i] - red.At(column), view.Green[i] - green.At(column), view.Blue[i] - blue.At(column));

                // Luminance weights of ITU-R BT.709 on logarithms; outside the photo all are NaN and nothing stands out.
                var difference = (0.2126f * r) + (0.7152f * g) + (0.0722f * b);
                var isThing = darkOnly
                    ? difference < -DarkOpening
                    : Math.Abs(difference) > LeastLight || Math.Abs(r - g) > LeastTint || Math.Abs(b - g) > LeastTint;
                ratio[row, column] = float.IsNaN(difference) ? 0 : difference;
                stands[row, column] = isThing ? (byte)255 : (byte)0;
            }
        });
    }

    private static RoughSlice? Judge(Point[] contour, Mat light, PlaneView view)
    {
        var area = Cv2.ContourArea(contour) * view.StepMm * view.StepMm;
        if (area < LeastAreaMm2 || Cv2.ContourArea(contour) < LeastSolidity * Cv2.ContourArea(Cv2.ConvexHull(contour)))
        {
            return null;
        }

        var touches = contour.Any(p => IsAtBorder(p, view));
        var rim = touches ? contour : AtHalfLevel(contour, light);
        return new(Array.ConvertAll(rim, p => view.PlaceOf(p.X, p.Y)), area, touches);
    }

    /// <summary>A dark thing's soft shadow is left out: its rim lies where light is midway between thing and ground.</summary>
    private static Point[] AtHalfLevel(Point[] contour, Mat light)
    {
        var box = Cv2.BoundingRect(contour);
        using var part = new Mat(light, box);
        using var inside = new Mat(box.Size, MatType.CV_8UC1, new Scalar(0));
        Cv2.FillPoly(inside, [contour.Select(p => new Point(p.X - box.X, p.Y - box.Y))], new Scalar(255));
        var level = Math.Log((1 + Math.Exp(Cv2.Mean(part, inside).Val0)) / 2);
        if (level > -LeastLight)
        {
            return contour;
        }

        using var dark = new Mat();
        Cv2.Compare(part, new Scalar(level), dark, CmpTypes.LT);
        Cv2.BitwiseAnd(dark, inside, dark);
        Cv2.FindContours(dark, out Point[][] cores, out _, RetrievalModes.External, ContourApproximationModes.ApproxNone);
        var core = cores.MaxBy(c => Cv2.ContourArea(c));
        return core is null || Cv2.ContourArea(core) < Cv2.ContourArea(contour) / 2
            ? contour
            : Array.ConvertAll(core, p => new Point(p.X + box.X, p.Y + box.Y));
    }

    private static bool IsAtBorder(Point p, PlaneView view)
    {
        if (p.X <= 2 || p.Y <= 2 || p.X >= view.Columns - 3 || p.Y >= view.Rows - 3)
        {
            return true;
        }

        return float.IsNaN(Green(2, 0)) || float.IsNaN(Green(-2, 0)) || float.IsNaN(Green(0, 2)) || float.IsNaN(Green(0, -2));

        float Green(int dx, int dy) => view.Green[((p.Y + dy) * view.Columns) + p.X + dx];
    }
}
