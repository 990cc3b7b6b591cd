using OpenCvSharp;
using SectionScan.Imaging.Checkerboards;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Lenses;

/// <summary>Makes a lens profile from photos of the sheet.</summary>
public static class LensProfiler
{
    /// <summary>The fewest photos that make a profile.</summary>
    public const int LeastPhotos = 4;

    private const double LeastTiltSpreadDeg = 12;
    private const double LeastCoverage = 0.5;
    private const double MostRmsPx = 1.0;
    private const double RimShare = 1.2;
    private const int GridColumns = 6;
    private const int GridRows = 4;

    /// <summary>Makes the profile.</summary>
    /// <param name="paths">The photos.</param>
    /// <param name="printRatioX">Measured over nominal length of the check bar across.</param>
    /// <param name="printRatioY">Measured over nominal length of the check bar up.</param>
    /// <param name="progress">Told the name of each photo when it is done.</param>
    /// <param name="checkerboardMm">Side of the squares when the photos show a plain checkerboard; null for the sheet or the card.</param>
    /// <returns>The profile with the problems of photos that were left out, or why there is none.</returns>
    public static Result<LensProfiling> Make(
        IReadOnlyList<string> paths, double printRatioX, double printRatioY, IProgress<string>? progress = null, double? checkerboardMm = null)
    {
        ArgumentNullException.ThrowIfNull(paths);
        var looks = new Result<Look>[paths.Count];
        Parallel.For(0, paths.Count, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            looks[i] = LookAt(paths[i], printRatioX, printRatioY, checkerboardMm);
            progress?.Report(Path.GetFileName(paths[i]));
        });

        var usable = new List<Look>();
        var left = new List<Problem>();
        for (var i = 0; i < looks.Length; i++)
        {
            if (!looks[i].TryGet(out var seen, out var problem))
            {
                left.Add(problem);
            }
            else if (usable.FirstOrDefault(other => other.Sha256 == seen.Sha256) is { } first)
            {
                left.Add(LensProblems.Repeated(paths[i], first.View.Name));
            }
            else
            {
                usable.Add(seen);
            }
        }

        var where = usable.Count > 0 ? $"{usable[0].View.Name} and {usable.Count - 1} more" : "lens photos";
        if (usable.Count < LeastPhotos)
        {
            return LensProblems.TooFewPhotos(where, usable.Count, LeastPhotos, left.FirstOrDefault());
        }

        if (usable.FirstOrDefault(l => l.Kind != usable[0].Kind) is { } other)
        {
            return LensProblems.Mixed(where, usable[0].Kind, other.Kind);
        }

        return Solve(usable, left, where);
    }

    private static Result<LensProfiling> Solve(List<Look> usable, List<Problem> left, string where)
    {
        var first = usable[0];
        var coverage = Coverage(usable);
        if (coverage.Share < LeastCoverage)
        {
            return LensProblems.PoorCoverage(where, coverage.Share, LeastCoverage, coverage.Missing);
        }

        var calibration = LensCalibration.Solve(
            [.. usable.Select(l => l.View)], LensPrior.Unknown(first.WidthPx, first.HeightPx, first.Focal35Mm));
        var spread = TiltSpreadDeg(calibration);
        if (spread < LeastTiltSpreadDeg)
        {
            return LensProblems.TooSimilar(where, spread, LeastTiltSpreadDeg);
        }

        if (calibration.RmsPx > MostRmsPx)
        {
            var worst = usable[calibration.ViewRmsPx.Select((r, i) => (r, i)).Max().i].View.Name;
            return LensProblems.BadFit(where, calibration.RmsPx, MostRmsPx, worst);
        }

        var photos = usable.Select((l, i) => new LensProfilePhoto(
            l.View.Name, l.View.Points.Count, calibration.ViewRmsPx[i],
            new Metrology.Cameras.Camera(calibration.Lens, calibration.Poses[i]).Tilt.Degrees)).ToArray();
        return new LensProfiling(
            new(first.Camera, first.WidthPx, first.HeightPx, first.Focal35Mm, usable.Select(l => l.TakenAt).Max(StringComparer.Ordinal),
                calibration.Lens, calibration.Covariance, calibration.RmsPx, photos, coverage.Share),
            left);
    }

    private static Result<Look> LookAt(string path, double printRatioX, double printRatioY, double? checkerboardMm)
    {
        if (!Photo.Read(path).TryGet(out var photo, out var problem))
        {
            return problem;
        }

        using (photo)
        {
            var found = checkerboardMm is { } squareMm
                ? CheckerboardFinder.Find(photo.Grey, squareMm, 0, path).Then<IReadOnlyList<SightedPoint>>(board => board.Points.ToArray())
                : TargetFinder.Find(photo.Grey, path).Then<IReadOnlyList<SightedPoint>>(target => target.Points.ToArray());
            if (!found.TryGet(out var sighted, out problem))
            {
                return problem;
            }

            var (width, height) = (photo.Grey.Width, photo.Grey.Height);
            var points = CameraFinder.AtTrueSize(sighted, printRatioX, printRatioY);
            var guess = LensPrior.FromExif(width, height, photo.Focal35Mm).Mean;
            return new Look(
                new(photo.Facts.File, points, CameraFinder.RoughPose(points, guess)), photo.Facts.Sha256,
                width, height, photo.Focal35Mm, photo.Facts.Camera, photo.Facts.TakenAt);
        }
    }

    private static double TiltSpreadDeg(LensCalibration calibration)
    {
        // The largest angle between two views' normals as the camera sees them.
        var normals = calibration.Poses.Select(p => p.RotationMatrix()).Select(r => (X: r[2], Y: r[5], Z: r[8])).ToArray();
        var least = 1.0;
        foreach (var a in normals)
        {
            foreach (var b in normals)
            {
                least = Math.Min(least, (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z));
            }
        }

        return double.RadiansToDegrees(Math.Acos(Math.Clamp(least, -1, 1)));
    }

    private static (double Share, string Missing) Coverage(List<Look> looks)
    {
        var hit = new bool[GridRows, GridColumns];
        foreach (var look in looks)
        {
            // What the target covers counts: the distortion is smooth, and the corners stand round it, one square inside its rim.
            var (meanX, meanY) = (look.View.Points.Average(p => p.Pixel.X), look.View.Points.Average(p => p.Pixel.Y));
            var hull = Cv2.ConvexHull(look.View.Points.Select(p => new Point2f(
                (float)(meanX + (RimShare * (p.Pixel.X - meanX))), (float)(meanY + (RimShare * (p.Pixel.Y - meanY))))));
            for (var row = 0; row < GridRows; row++)
            {
                for (var column = 0; column < GridColumns; column++)
                {
                    var middle = new Point2f((column + 0.5f) * look.WidthPx / GridColumns, (row + 0.5f) * look.HeightPx / GridRows);
                    hit[row, column] |= Cv2.PointPolygonTest(hull, middle, false) >= 0;
                }
            }
        }

        var missing = new List<string>();
        var count = 0;
        string[] names = ["top left", "top", "top right", "left", "middle", "right", "bottom left", "bottom", "bottom right"];
        var misses = new int[9];
        for (var row = 0; row < GridRows; row++)
        {
            for (var column = 0; column < GridColumns; column++)
            {
                count += hit[row, column] ? 1 : 0;
                misses[((row == 0 ? 0 : row < GridRows - 1 ? 1 : 2) * 3) + (column < 2 ? 0 : column < 4 ? 1 : 2)] += hit[row, column] ? 0 : 1;
            }
        }

        for (var i = 0; i < 9; i++)
        {
            if (misses[i] >= 1)
            {
                missing.Add(names[i]);
            }
        }

        return (count / (double)(GridRows * GridColumns), missing.Count == 0 ? "single spots" : string.Join(", ", missing));
    }

    private sealed record Look(
        LensView View, string Sha256, int WidthPx, int HeightPx, double? Focal35Mm, string? Camera, string? TakenAt)
    {
        public string Kind => FormattableString.Invariant($"{Camera ?? "unknown camera"} at {Focal35Mm ?? 0:0} mm, {WidthPx} × {HeightPx} px");
    }
}
