using OpenCvSharp;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Checkerboards;

/// <summary>Finds a plain chessboard of any size, also one that runs out of the frame or has things lying on it.</summary>
internal static class CheckerboardFinder
{
    // Squares of 15 px and more are told apart in the working picture.
    private const int WorkingSidePx = 1400;
    private const int LeastRows = 3;

    // A lattice that often meets corners of the wrong colour or twice the same is not believed.
    private const double MostContradictionShare = 0.15;

    /// <summary>Finds the board.</summary>
    /// <param name="grey">H × W, CV_8UC1, as stored.</param>
    /// <param name="squareMm">Side of a square, mm.</param>
    /// <param name="quarterTurns">Quarter turns clockwise to the display, for the direction of the axes.</param>
    /// <param name="where">The photo, for messages.</param>
    /// <returns>The board, or <c>no-checkerboard</c>, <c>checkerboard-contradicts-itself</c>.</returns>
    public static Result<CheckerboardSighting> Find(Mat grey, double squareMm, int quarterTurns, string where)
    {
        var shrink = Math.Max(1, Math.Max(grey.Width, grey.Height) / (double)WorkingSidePx);
        using var small = new Mat();
        Cv2.Resize(grey, small, new Size((int)(grey.Width / shrink), (int)(grey.Height / shrink)), 0, 0, InterpolationFlags.Area);
        var (scaleX, scaleY) = (grey.Width / (double)small.Width, grey.Height / (double)small.Height);
        var lattice = new LatticeGrower(small, SaddleCandidates.Find(small)).Grow();
        var columns = Extent(lattice.Points.Keys.Select(k => k.Column));
        var rows = Extent(lattice.Points.Keys.Select(k => k.Row));
        if (lattice.Points.Count < TargetFinder.LeastCorners || columns < LeastRows || rows < LeastRows)
        {
            return CheckerboardProblems.NotFound(where, lattice.Points.Count, TargetFinder.LeastCorners);
        }

        if (lattice.Contradictions > MostContradictionShare * lattice.Points.Count)
        {
            return CheckerboardProblems.Contradiction(where, lattice.Contradictions, lattice.Points.Count);
        }

        var full = lattice.Points.ToDictionary(
            p => p.Key, p => new PixelPoint(((p.Value.X + 0.5) * scaleX) - 0.5, ((p.Value.Y + 0.5) * scaleY) - 0.5));
        var points = Refine(grey, Turned(full, quarterTurns), squareMm);
        return points.Count < TargetFinder.LeastCorners
            ? CheckerboardProblems.NotFound(where, points.Count, TargetFinder.LeastCorners)
            : new CheckerboardSighting(points, Span(points.Select(p => p.Target.XMm)), Span(points.Select(p => p.Target.YMm)));

        int Span(IEnumerable<double> places) => Extent(places.Select(mm => (int)Math.Round(mm / squareMm)));
    }

    /// <summary>Indices with columns to the right and rows down as displayed, from zero.</summary>
    private static Dictionary<(int Column, int Row), PixelPoint> Turned(Dictionary<(int Column, int Row), PixelPoint> points, int quarterTurns)
    {
        var map = LatticeMap.Through([.. points.Select(p => (p.Key, p.Value))])!.Value;
        var (u, v) = (Displayed(map.U, quarterTurns), Displayed(map.V, quarterTurns));
        Func<(int Column, int Row), (int Column, int Row)> turn = Math.Abs(u.X) >= Math.Abs(v.X)
            ? k => (u.X > 0 ? k.Column : -k.Column, v.Y > 0 ? k.Row : -k.Row)
            : k => (v.X > 0 ? k.Row : -k.Row, u.Y > 0 ? k.Column : -k.Column);
        var turned = points.ToDictionary(p => turn(p.Key), p => p.Value);
        var (left, top) = (turned.Keys.Min(k => k.Column), turned.Keys.Min(k => k.Row));
        return turned.ToDictionary(p => (p.Key.Column - left, p.Key.Row - top), p => p.Value);
    }

    private static (double X, double Y) Displayed((double X, double Y) step, int quarterTurns) => quarterTurns switch
    {
        1 => (-step.Y, step.X),
        2 => (-step.X, -step.Y),
        3 => (step.Y, -step.X),
        _ => step,
    };

    private static List<SightedPoint> Refine(Mat grey, Dictionary<(int Column, int Row), PixelPoint> points, double squareMm)
    {
        var spacing = points.ToDictionary(p => p.Key, p => SpacingAt(points, p.Key));

        // Below half the smallest square's picture, so that no window holds two corners.
        var half = (int)Math.Clamp(spacing.Values.Min() / 5, 3, 14);
        var ordered = points.OrderBy(p => p.Key.Row).ThenBy(p => p.Key.Column).ToArray();
        var inside = ordered.Where(p => SaddleCheck.IsInside(grey, p.Value, spacing[p.Key]) && IsInside(grey, p.Value, half + 3)).ToArray();
        if (inside.Length == 0)
        {
            return [];
        }

        var refined = Cv2.CornerSubPix(
            grey, [.. inside.Select(p => new Point2f((float)p.Value.X, (float)p.Value.Y))], new Size(half, half), new Size(-1, -1),
            new TermCriteria(CriteriaTypes.Eps | CriteriaTypes.MaxIter, 60, 0.001));
        var sighted = new List<SightedPoint>();
        for (var i = 0; i < inside.Length; i++)
        {
            var (index, pixel) = (inside[i].Key, new PixelPoint(refined[i].X, refined[i].Y));
            if (pixel.DistanceTo(inside[i].Value) < spacing[index] / 8 && SaddleCheck.IsInside(grey, pixel, spacing[index])
                && SaddleCheck.IsSaddle(grey, pixel, spacing[index]))
            {
                sighted.Add(new(new(index.Column * squareMm, index.Row * squareMm), pixel));
            }
        }

        return sighted;
    }

    private static double SpacingAt(Dictionary<(int Column, int Row), PixelPoint> points, (int Column, int Row) index)
    {
        var least = double.MaxValue;
        for (var other = -1; other <= 1; other += 2)
        {
            foreach (var neighbour in new[] { (index.Column + other, index.Row), (index.Column, index.Row + other) })
            {
                least = points.TryGetValue(neighbour, out var at) ? Math.Min(least, at.DistanceTo(points[index])) : least;
            }
        }

        return least < double.MaxValue ? least : points.Values.Where(p => p != points[index]).Min(p => p.DistanceTo(points[index])) / 2;
    }

    private static bool IsInside(Mat grey, PixelPoint at, int margin) =>
        at.X >= margin && at.Y >= margin && at.X < grey.Width - margin && at.Y < grey.Height - margin;

    private static int Extent(IEnumerable<int> indices)
    {
        var all = indices.ToList();
        return all.Count == 0 ? 0 : all.Max() - all.Min() + 1;
    }
}
