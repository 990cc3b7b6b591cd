using OpenCvSharp;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Targets;

/// <summary>Finds the scale target and its saddle points.</summary>
internal static class TargetFinder
{
    /// <summary>Fewer saddle points than this do not fix a camera well enough to measure with.</summary>
    public const int LeastCorners = 12;

    // Markers are large; looking for them in a smaller picture costs a quarter of the time and loses none.
    private const int SearchSidePx = 2016;
    private const double LeastSpread = 0.55;

    /// <summary>Finds the sheet or else the card, and refines its saddle points in the full picture.</summary>
    /// <param name="grey">H × W, CV_8UC1.</param>
    /// <param name="where">The photo, for messages.</param>
    /// <returns>The sighting, or <c>no-target</c>, <c>too-few-corners</c>, <c>corners-badly-spread</c>.</returns>
    public static Result<TargetSighting> Find(Mat grey, string where)
    {
        var shrink = Math.Max(1, (int)Math.Round(Math.Max(grey.Width, grey.Height) / (double)SearchSidePx));
        using var small = new Mat();
        Cv2.Resize(grey, small, new Size(grey.Width / shrink, grey.Height / shrink), 0, 0, InterpolationFlags.Area);

        foreach (var target in new[] { ScaleTarget.Sheet, ScaleTarget.Card })
        {
            var markers = MarkersOf(target, small, shrink);
            if (markers.Count >= 3)
            {
                return Refine(grey, target, markers, where);
            }
        }

        return TargetProblems.NotFound(where);
    }

    private static List<SightedPoint> MarkersOf(ScaleTarget target, Mat small, int shrink)
    {
        var printed = target.Markers.ToDictionary(m => m.Id);
        var margin = (target.SquareMm - target.MarkerMm) / 2;
        var corners = new List<SightedPoint>();
        foreach (var (id, pixels) in MarkerFinder.Find(small, target.Dictionary))
        {
            if (!printed.TryGetValue(id, out var marker))
            {
                continue;
            }

            var (left, top) = ((marker.Column * target.SquareMm) + margin, (marker.Row * target.SquareMm) + margin);
            TargetPoint[] places =
            [
                new(left, top), new(left + target.MarkerMm, top),
                new(left + target.MarkerMm, top + target.MarkerMm), new(left, top + target.MarkerMm),
            ];
            for (var i = 0; i < 4; i++)
            {
                // Pixel centres: the middle of a block of shrink pixels.
                corners.Add(new(places[i], new((pixels[i].X * shrink) + ((shrink - 1) / 2.0), (pixels[i].Y * shrink) + ((shrink - 1) / 2.0))));
            }
        }

        return corners.Count < 12 ? [] : corners;
    }

    private static Result<TargetSighting> Refine(Mat grey, ScaleTarget target, List<SightedPoint> corners, string where)
    {
        var guesses = new List<(TargetPoint Place, Point2f Pixel, double SquarePx)>();
        foreach (var saddle in target.Saddles)
        {
            if (PredictSaddle(saddle, corners, target.SquareMm) is { } guess
                && SaddleCheck.IsInside(grey, guess.Pixel, guess.SquarePx))
            {
                guesses.Add((saddle, new((float)guess.Pixel.X, (float)guess.Pixel.Y), guess.SquarePx));
            }
        }

        if (guesses.Count < LeastCorners)
        {
            return TargetProblems.TooFewCorners(where, target.Kind, guesses.Count, LeastCorners);
        }

        // The margin between saddle and marker is an eighth of a square; the window must not reach the marker.
        var halfWindow = (int)Math.Clamp(guesses.Min(g => g.SquarePx) / 9, 3, 14);
        var refined = Cv2.CornerSubPix(
            grey, guesses.Select(g => g.Pixel).ToArray(), new Size(halfWindow, halfWindow), new Size(-1, -1),
            new TermCriteria(CriteriaTypes.Eps | CriteriaTypes.MaxIter, 60, 0.001));
        var points = new List<SightedPoint>();
        for (var i = 0; i < guesses.Count; i++)
        {
            var pixel = new PixelPoint(refined[i].X, refined[i].Y);
            var moved = pixel.DistanceTo(new(guesses[i].Pixel.X, guesses[i].Pixel.Y));
            if (moved < guesses[i].SquarePx / 8 && SaddleCheck.IsSaddle(grey, pixel, guesses[i].SquarePx))
            {
                points.Add(new(guesses[i].Place, pixel));
            }
        }

        if (points.Count < LeastCorners)
        {
            return TargetProblems.TooFewCorners(where, target.Kind, points.Count, LeastCorners);
        }

        var spread = SpreadOf(points, target);
        return spread < LeastSpread
            ? TargetProblems.BadlySpread(where, target.Kind, spread)
            : new TargetSighting(target, points);
    }

    /// <summary>Where a saddle should be seen: the homography of the nearest marker corners, which carries the lens's bending.</summary>
    private static (PixelPoint Pixel, double SquarePx)? PredictSaddle(TargetPoint saddle, List<SightedPoint> corners, double squareMm)
    {
        var near = corners.OrderBy(c => c.Target.DistanceTo(saddle)).Take(12).ToList();
        if (near.Count < 4 || near[0].Target.DistanceTo(saddle) > squareMm)
        {
            return null;
        }

        using var h = Cv2.FindHomography(
            near.Select(c => new Point2d(c.Target.XMm, c.Target.YMm)), near.Select(c => new Point2d(c.Pixel.X, c.Pixel.Y)));
        if (h.Empty())
        {
            return null;
        }

        var mapped = Cv2.PerspectiveTransform(
            [new Point2d(saddle.XMm, saddle.YMm), new Point2d(saddle.XMm + 1, saddle.YMm), new Point2d(saddle.XMm, saddle.YMm + 1)], h);
        var at = new PixelPoint(mapped[0].X, mapped[0].Y);
        var pixelsPerMm = Math.Min(at.DistanceTo(new(mapped[1].X, mapped[1].Y)), at.DistanceTo(new(mapped[2].X, mapped[2].Y)));
        return double.IsFinite(pixelsPerMm) ? (at, pixelsPerMm * squareMm) : null;
    }

    /// <summary>The smaller of the shares of the target's width and height that the points span.</summary>
    private static double SpreadOf(List<SightedPoint> points, ScaleTarget target)
    {
        var across = points.Max(p => p.Target.XMm) - points.Min(p => p.Target.XMm);
        var down = points.Max(p => p.Target.YMm) - points.Min(p => p.Target.YMm);
        return Math.Min(across / (target.WidthMm - (2 * target.SquareMm)), down / (target.HeightMm - (2 * target.SquareMm)));
    }
}
