using OpenCvSharp;

namespace SectionScan.Imaging.Slices;

/// <summary>Which regions are faces of slices, which are paper and which are shadow.</summary>
internal static class FaceChoice
{
    private const double LeastAreaMm2 = 45;

    // Tint that a shadow may have: none at its rim, more the deeper it is, since lamp and room differ in colour.
    private const double ShadowTint = 0.12;
    private const double ShadowTintPerLight = 0.2;

    // No shadow on white paper is as dark as one seventh of the lit paper unless the room is black.
    private const double DarkestShadow = -1.95;
    private const double PaperLight = 0.035;
    private const double PaperTint = 0.035;
    private const double FaceSolidity = 0.86;

    // What lies along this share of the window's border (two cells deep) is the paper itself, however it is lit.
    private const double MostOfBorder = 0.3;

    /// <summary>Chooses the faces.</summary>
    /// <param name="regions">All regions.</param>
    /// <param name="labels">R × C, CV_32SC1: each cell's region.</param>
    /// <param name="seeds">Cells that a person says are on faces. Paper, which runs along the border, is none all the same.</param>
    public static IReadOnlyList<RegionStatistics> Choose(IReadOnlyList<RegionStatistics> regions, Mat labels, IReadOnlyList<Point> seeds)
    {
        var seeded = seeds.Select(cell => labels.At<int>(cell.Y, cell.X)).ToHashSet();
        var border = 4 * (labels.Rows + labels.Cols);
        List<RegionStatistics> told = [.. regions.Where(r => seeded.Contains(r.Label) && r.TouchesBorder <= MostOfBorder * border)];
        return [.. Choose([.. regions.Except(told)], labels), .. told];
    }

    private static List<RegionStatistics> Choose(IReadOnlyList<RegionStatistics> regions, Mat labels)
    {
        var border = 4 * (labels.Rows + labels.Cols);
        var faces = new List<RegionStatistics>();
        var doubtful = new List<RegionStatistics>();
        foreach (var region in regions.Where(r => r.AreaMm2 >= LeastAreaMm2).OrderByDescending(r => r.AreaMm2))
        {
            var isPaper = Math.Abs(region.Light) < PaperLight && region.Tint < PaperTint;
            if (isPaper || region.TouchesBorder > MostOfBorder * border)
            {
                continue;
            }

            var tinted = region.Tint > ShadowTint + (ShadowTintPerLight * Math.Max(0, -region.Light));
            if (tinted || region.Light < DarkestShadow)
            {
                faces.Add(region);
            }
            else
            {
                doubtful.Add(region);
            }
        }

        foreach (var region in doubtful)
        {
            if (IsCompact(region, labels))
            {
                faces.Add(region);
            }
        }

        return DropWallsAndCrescents(faces, labels);
    }

    private static bool IsCompact(RegionStatistics region, Mat labels)
    {
        var shape = ShapeOf(region, labels);
        return shape is not null && Cv2.ContourArea(shape) > FaceSolidity * Cv2.ContourArea(Cv2.ConvexHull(shape));
    }

    /// <summary>A wall or a crescent of shadow lies round a face: its hull takes in much of the face.</summary>
    private static List<RegionStatistics> DropWallsAndCrescents(List<RegionStatistics> faces, Mat labels)
    {
        var kept = new List<RegionStatistics>();
        foreach (var region in faces.OrderByDescending(f => f.AreaMm2))
        {
            var shape = ShapeOf(region, labels);
            if (shape is null)
            {
                continue;
            }

            var hull = Cv2.ConvexHull(shape);
            var solidity = Cv2.ContourArea(shape) / Math.Max(1, Cv2.ContourArea(hull));
            if (solidity < 0.7 && kept.Any(face => HullTakesIn(hull, face, labels)))
            {
                continue;
            }

            kept.Add(region);
        }

        return kept;
    }

    private static bool HullTakesIn(Point[] hull, RegionStatistics face, Mat labels)
    {
        var shape = ShapeOf(face, labels);
        return shape is not null && shape.Count(p => Cv2.PointPolygonTest(hull, p, false) >= 0) > 0.15 * shape.Length;
    }

    private static Point[]? ShapeOf(RegionStatistics region, Mat labels)
    {
        using var own = new Mat();
        Cv2.Compare(labels, new Scalar(region.Label), own, CmpTypes.EQ);
        Cv2.FindContours(own, out Point[][] contours, out _, RetrievalModes.External, ContourApproximationModes.ApproxNone);
        return contours.Length == 0 ? null : contours.MaxBy(c => Cv2.ContourArea(c));
    }
}
