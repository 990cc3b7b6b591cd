using OpenCvSharp;
using SectionScan.Imaging.Grounds;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Slices;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Openings;

/// <summary>Finds port openings in a sawn or milled face beside the card: dark, compact places with bright metal all round.</summary>
internal static class OpeningFinder
{
    private const double StepMm = 0.25;
    private const double LeastAreaMm2 = 80;
    private const double LargestAreaMm2 = 8000;

    // How far from the card the metal is looked at, mm.
    private const double ReachMm = 150;

    // The card's paper reaches this far beyond its squares; metal is sampled beyond.
    private const double PaperMarginMm = 8;

    // Darker than the metal by this in ln(light): the inside of a port.
    private const double DarkByLog = 0.5;
    private const double LeastSolidity = 0.8;
    private const double MetalRing = 0.65;

    // Cut off along more of its rim than this it is no opening but what lies beside the casting.
    private const double MostBorderShare = 0.4;

    /// <summary>Finds the openings.</summary>
    /// <param name="colour">H × W, CV_8UC3.</param>
    /// <param name="camera">The camera.</param>
    /// <param name="target">The card.</param>
    /// <param name="printRatioX">The card's own print ratio across.</param>
    /// <param name="printRatioY">The same down.</param>
    public static IReadOnlyList<RoughSlice> Find(Mat colour, Camera camera, ScaleTarget target, double printRatioX, double printRatioY)
    {
        var (widthMm, heightMm) = (target.WidthMm * printRatioX, target.HeightMm * printRatioY);
        var region = SeenRegion(colour, camera, widthMm, heightMm);
        var view = PlaneView.Of(
            colour, camera, new(region.Left, region.Top), region.Right - region.Left, region.Bottom - region.Top, StepMm);
        using var light = LogLight(view);
        Cv2.GaussianBlur(light, light, new Size(7, 7), 1.6);
        var metal = MetalLevel(light, view, widthMm, heightMm);
        using var dark = new Mat();
        Cv2.Threshold(light, dark, metal - DarkByLog, 255, ThresholdTypes.BinaryInv);
        dark.ConvertTo(dark, MatType.CV_8UC1);
        MaskCard(dark, view, widthMm, heightMm);
        using var seen = Seen(view);
        using var kernel = Cv2.GetStructuringElement(MorphShapes.Ellipse, new Size(13, 13));
        Cv2.MorphologyEx(dark, dark, MorphTypes.Open, kernel);
        Cv2.MorphologyEx(dark, dark, MorphTypes.Close, kernel);

        // Outer borders of all dark places, also of those inside a ring of dark table round the casting.
        Cv2.FindContours(dark, out Point[][] contours, out var hierarchy, RetrievalModes.CComp, ContourApproximationModes.ApproxNone);
        var openings = new List<RoughSlice>();
        for (var i = 0; i < contours.Length; i++)
        {
            if (hierarchy[i].Parent < 0 && Judge(contours[i], light, seen, view, metal) is { } opening)
            {
                openings.Add(opening);
            }
        }

        return openings;
    }

    private static RoughSlice? Judge(Point[] contour, Mat light, Mat seen, PlaneView view, double metal)
    {
        var area = Cv2.ContourArea(contour) * StepMm * StepMm;
        var hull = Cv2.ConvexHull(contour);
        if (area < LeastAreaMm2 || area > LargestAreaMm2 || Cv2.ContourArea(contour) < LeastSolidity * Cv2.ContourArea(hull))
        {
            return null;
        }

        // Metal must go on all round: a shadow or the table beside the casting has it on one side only.
        using var own = new Mat(light.Size(), MatType.CV_8UC1, new Scalar(0));
        Cv2.FillConvexPoly(own, hull, new Scalar(255));
        using var wide = Cv2.GetStructuringElement(MorphShapes.Ellipse, new Size(25, 25));
        using var around = new Mat();
        Cv2.Dilate(own, around, wide);
        Cv2.BitwiseXor(around, own, around);
        using var bright = new Mat();
        Cv2.Compare(light, new Scalar(metal - DarkByLog), bright, CmpTypes.GT);
        Cv2.BitwiseAnd(bright, seen, bright);
        Cv2.BitwiseAnd(bright, around, bright);
        Cv2.BitwiseAnd(around, seen, around);
        var share = Cv2.CountNonZero(bright) / (double)Math.Max(1, Cv2.CountNonZero(around));
        var onBorder = contour.Count(p => p.X <= 2 || p.Y <= 2 || p.X >= view.Columns - 3 || p.Y >= view.Rows - 3 || !IsSeen(seen, p));
        var touches = onBorder > 0;
        if (share < MetalRing || onBorder > MostBorderShare * contour.Length)
        {
            return null;
        }

        return new(Array.ConvertAll(touches ? contour : hull, p => view.PlaceOf(p.X, p.Y)), area, touches);
    }

    private static bool IsSeen(Mat seen, Point p) => seen.At<byte>(p.Y, p.X) != 0;

    private static (double Left, double Top, double Right, double Bottom) SeenRegion(Mat colour, Camera camera, double widthMm, double heightMm)
    {
        PixelPoint[] corners = [new(0, 0), new(colour.Width - 1, 0), new(colour.Width - 1, colour.Height - 1), new(0, colour.Height - 1)];
        var places = Array.ConvertAll(corners, c => camera.BackProject(c, 0));
        return (
            Math.Max(places.Min(p => p.XMm), -ReachMm), Math.Max(places.Min(p => p.YMm), -ReachMm),
            Math.Min(places.Max(p => p.XMm), widthMm + ReachMm), Math.Min(places.Max(p => p.YMm), heightMm + ReachMm));
    }

    private static Mat LogLight(PlaneView view)
    {
        var logLight = new Mat(view.Rows, view.Columns, MatType.CV_32FC1);
        var cells = logLight.GetUnsafeGenericIndexer<float>();
        for (var row = 0; row < view.Rows; row++)
        {
            for (var column = 0; column < view.Columns; column++)
            {
                var i = (row * view.Columns) + column;
                var light = (0.2126f * view.Red[i]) + (0.7152f * view.Green[i]) + (0.0722f * view.Blue[i]);
                cells[row, column] = float.IsNaN(light) ? LinearLight.LogOfStored[0] : light;
            }
        }

        return logLight;
    }

    private static Mat Seen(PlaneView view)
    {
        var seen = new Mat(view.Rows, view.Columns, MatType.CV_8UC1);
        var cells = seen.GetUnsafeGenericIndexer<byte>();
        for (var row = 0; row < view.Rows; row++)
        {
            for (var column = 0; column < view.Columns; column++)
            {
                cells[row, column] = float.IsNaN(view.Green[(row * view.Columns) + column]) ? (byte)0 : (byte)255;
            }
        }

        return seen;
    }

    /// <summary>The metal's usual ln(light): the upper middle of what lies in a band round the card.</summary>
    private static double MetalLevel(Mat light, PlaneView view, double widthMm, double heightMm)
    {
        var levels = new List<float>();
        var cells = light.GetUnsafeGenericIndexer<float>();
        for (var row = 0; row < view.Rows; row += 2)
        {
            for (var column = 0; column < view.Columns; column += 2)
            {
                var place = view.PlaceOf(column, row);
                var outside = Math.Max(
                    Math.Max(-place.XMm, place.XMm - widthMm), Math.Max(-place.YMm, place.YMm - heightMm));
                if (outside > PaperMarginMm && outside < PaperMarginMm + 14 && !float.IsNaN(view.Green[(row * view.Columns) + column]))
                {
                    levels.Add(cells[row, column]);
                }
            }
        }

        levels.Sort();
        return levels.Count == 0 ? 0 : levels[(int)(0.7 * (levels.Count - 1))];
    }

    private static void MaskCard(Mat dark, PlaneView view, double widthMm, double heightMm)
    {
        var left = (int)((-PaperMarginMm + 2 - view.Corner.XMm) / StepMm);
        var top = (int)((-PaperMarginMm + 2 - view.Corner.YMm) / StepMm);
        var width = (int)((widthMm + (2 * PaperMarginMm) - 4) / StepMm);
        var height = (int)((heightMm + (2 * PaperMarginMm) - 4) / StepMm);
        Cv2.Rectangle(dark, new Rect(left, top, width, height), new Scalar(0), -1);
    }
}
