using OpenCvSharp;
using SectionScan.Imaging.Grounds;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Slices;

/// <summary>Finds slices in the window: regions between edges, told from paper and shadow by tint, darkness and shape.</summary>
internal static class SliceFinder
{
    // A face has at least this area; a slug of mould smaller than 9 mm across is not a section.
    private const double LeastAreaMm2 = 60;
    private const double CoreRadiusMm = 1.2;

    // Changes over three cells that count as an edge: 0.1 of light or 0.08 of tint at first; evened out, 0.04 and 0.008, which is what a
    // step of 0.02 of tint leaves of itself. Soft shadows stay below.
    private const int EdgeStep = 8;
    private const int FineEdgeStep = 3;

    // The face's light is judged against the median over this diameter: wider than any visible wall.
    private const double AroundMm = 7;

    // In feature bytes: 0.25 of ln(light).
    private const int FaceLightTolerance = 20;

    // In feature bytes: 0.4 of ln(light).
    private const int StainTolerance = 32;

    /// <summary>Finds the slices.</summary>
    /// <param name="ratio">The window over its paper.</param>
    /// <param name="masked">Places that are no slice: the station tags, as polygons in mm. There is a slice for each at least.</param>
    /// <param name="seeds">Places that a person says are slices, in the plane of the paper.</param>
    public static IReadOnlyList<RoughSlice> Find(PaperRatio ratio, IReadOnlyList<TargetPoint[]> masked, IReadOnlyList<TargetPoint> seeds)
    {
        using var features = Features(ratio);
        Mask(features, ratio.View, masked);
        var slices = FindIn(features, features, EdgeStep, ratio.View, seeds);
        List<TargetPoint> unseen = [.. seeds.Where(seed => !slices.Any(slice => slice.Holds(seed)))];
        if (slices.Count == 0 || slices.Count < masked.Count || unseen.Count > 0)
        {
            // Grey plaster and near-white silicone differ from paper and shadow by a breath of tint only, and from each other's grain
            // by nothing: look again, evened out and with a finer eye.
            using var fine = FineFeatures(ratio);
            Mask(fine, ratio.View, masked);
            slices.AddRange(FindIn(fine, features, FineEdgeStep, ratio.View, unseen).Where(other => slices.All(s => !Overlap(s, other))).ToList());
        }

        return SplitFaces.Join(slices, features, ratio.View);
    }

    private static List<RoughSlice> FindIn(Mat split, Mat features, int edgeStep, PlaneView view, IReadOnlyList<TargetPoint> seeds)
    {
        using var regions = RegionMap.Split(split, (int)Math.Round(CoreRadiusMm / PaperRatio.StepMm), edgeStep);
        var kinds = RegionStatistics.Of(regions.Labels, regions.Count, features, PaperRatio.StepMm);
        if (regions.JoinAlike(kinds))
        {
            kinds = RegionStatistics.Of(regions.Labels, regions.Count, features, PaperRatio.StepMm);
        }

        var slices = new List<RoughSlice>();
        using var mask = new Mat(view.Rows, view.Columns, MatType.CV_8UC1);
        foreach (var kind in FaceChoice.Choose(kinds, regions.Labels, Cells(seeds, view)))
        {
            FaceMask(mask, regions.Labels, features, kind);
            if (RimOf(mask, view) is { } rough && rough.AreaMm2 >= LeastAreaMm2)
            {
                slices.Add(rough);
            }
        }

        return slices;
    }

    private static bool Overlap(RoughSlice one, RoughSlice other) =>
        one.Holds(new(other.Rim.Average(p => p.XMm), other.Rim.Average(p => p.YMm)));

    private static List<Point> Cells(IReadOnlyList<TargetPoint> places, PlaneView view) => [.. places
        .Select(view.CellOf)
        .Where(p => p.X >= 0 && p.Y >= 0 && p.X < view.Columns && p.Y < view.Rows)];

    /// <summary>The three logarithmic features as bytes (light, red-green, blue-green), lightly smoothed: one step of a byte is
    /// 0.0125 of light and 0.01 of tint.</summary>
    private static Mat Features(PaperRatio ratio)
    {
        var raw = Bytes(ratio, FeatureScale.TintByte);
        Cv2.GaussianBlur(raw, raw, new Size(3, 3), 0.8);
        return raw;
    }

    /// <summary>The same with tint four times finer, smoothed over half a millimetre: saw marks and grain even out.</summary>
    private static Mat FineFeatures(PaperRatio ratio)
    {
        var raw = Bytes(ratio, FeatureScale.FineTintByte);
        Cv2.MedianBlur(raw, raw, 5);
        Cv2.GaussianBlur(raw, raw, new Size(11, 11), 2);
        return raw;
    }

    private static Mat Bytes(PaperRatio ratio, Func<float, byte> tint)
    {
        var (rows, columns) = (ratio.View.Rows, ratio.View.Columns);
        var raw = new Mat(rows, columns, MatType.CV_8UC3);
        var pixels = raw.GetUnsafeGenericIndexer<Vec3b>();
        Parallel.For(0, rows, row =>
        {
            for (var column = 0; column < columns; column++)
            {
                var i = (row * columns) + column;
                pixels[row, column] = new(FeatureScale.LightByte(ratio.Light[i]), tint(ratio.RedGreen[i]), tint(ratio.BlueGreen[i]));
            }
        });
        return raw;
    }

    private static void Mask(Mat features, PlaneView view, IReadOnlyList<TargetPoint[]> masked)
    {
        var paper = new Scalar(FeatureScale.LightByte(0), FeatureScale.TintByte(0), FeatureScale.TintByte(0));
        foreach (var polygon in masked)
        {
            Cv2.FillConvexPoly(features, Array.ConvertAll(polygon, view.CellOf), paper);
        }
    }

    /// <summary>The region's cells that have about the face's light thereabouts: a shaded or brightly lit wall has not, a stained
    /// patch of face has. Bubbles are filled, shreds opened away.</summary>
    private static void FaceMask(Mat mask, Mat labels, Mat features, RegionStatistics kind)
    {
        using var own = new Mat();
        Cv2.Compare(labels, new Scalar(kind.Label), own, CmpTypes.EQ);
        var box = Cv2.BoundingRect(own);
        using var ownPart = new Mat(own, box);
        using var featurePart = new Mat(features, box);
        using var light = new Mat();
        Cv2.ExtractChannel(featurePart, light, 0);
        using var others = new Mat();
        Cv2.BitwiseNot(ownPart, others);
        light.SetTo(new Scalar(FeatureScale.LightByte((float)kind.Light)), others);
        using var around = new Mat();
        Cv2.MedianBlur(light, around, (2 * (int)Math.Round(AroundMm / 2 / PaperRatio.StepMm)) + 1);
        using var difference = new Mat();
        Cv2.Absdiff(light, around, difference);
        using var alike = new Mat();
        Cv2.Threshold(difference, alike, FaceLightTolerance, 255, ThresholdTypes.BinaryInv);
        Cv2.BitwiseAnd(alike, ownPart, alike);
        mask.SetTo(new Scalar(0));
        using var part = new Mat(mask, box);
        alike.CopyTo(part);
        using var small = Cv2.GetStructuringElement(MorphShapes.Ellipse, new Size(9, 9));
        using var large = Cv2.GetStructuringElement(MorphShapes.Ellipse, new Size(13, 13));
        using var near = new Mat(mask, Around(box, 8, mask.Size()));
        Cv2.MorphologyEx(near, near, MorphTypes.Close, small);
        Cv2.MorphologyEx(near, near, MorphTypes.Open, large);
        FillStains(part, ownPart, featurePart, kind);
        Cv2.MorphologyEx(near, near, MorphTypes.Open, large);
    }

    /// <summary>Dents of the face that the region goes on in and that are no darker or brighter than a stain belong to the face.</summary>
    private static void FillStains(Mat mask, Mat own, Mat features, RegionStatistics kind)
    {
        Cv2.FindContours(mask, out Point[][] contours, out _, RetrievalModes.External, ContourApproximationModes.ApproxNone);
        if (contours.Length == 0)
        {
            return;
        }

        using var hull = new Mat(mask.Size(), MatType.CV_8UC1, new Scalar(0));
        Cv2.FillConvexPoly(hull, Cv2.ConvexHull(contours.MaxBy(c => Cv2.ContourArea(c))!), new Scalar(255));
        using var light = new Mat();
        Cv2.ExtractChannel(features, light, 0);
        using var alike = new Mat();
        var level = FeatureScale.LightByte((float)kind.Light);
        Cv2.InRange(light, new Scalar(level - StainTolerance), new Scalar(level + StainTolerance), alike);
        Cv2.BitwiseAnd(alike, hull, alike);
        Cv2.BitwiseAnd(alike, own, alike);
        Cv2.BitwiseOr(mask, alike, mask);
    }

    private static Rect Around(Rect box, int margin, Size limits)
    {
        box.Inflate(margin, margin);
        return box.Intersect(new Rect(0, 0, limits.Width, limits.Height));
    }

    private static RoughSlice? RimOf(Mat mask, PlaneView view)
    {
        Cv2.FindContours(mask, out Point[][] contours, out _, RetrievalModes.External, ContourApproximationModes.ApproxNone);
        if (contours.Length == 0)
        {
            return null;
        }

        var rim = contours.MaxBy(c => Cv2.ContourArea(c))!;
        var touches = rim.Any(p => p.X <= 1 || p.Y <= 1 || p.X >= view.Columns - 2 || p.Y >= view.Rows - 2);
        var area = Cv2.ContourArea(rim) * view.StepMm * view.StepMm;
        return new(Array.ConvertAll(rim, p => view.PlaceOf(p.X, p.Y)), area, touches);
    }
}
