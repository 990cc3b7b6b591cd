using OpenCvSharp;
using OpenCvSharp.Aruco;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Targets;

/// <summary>Finds the station tags that lie in the sheet's window.</summary>
internal static class StationTagFinder
{
    private const double TagSideMm = 10;
    private const double SideToleranceMm = 1.5;

    // A tag of 10 mm keeps five pixels a bit at the first scale; the coarser ones even out blur. In the shadow of a slice its black border
    // differs from the paper by as many times as in the light, but by few grey levels: those are looked for in the logarithm of the light.
    private static readonly (double PixelsPerMm, bool IsShaded)[] Searches = [(6.5, false), (3.6, false), (2.5, false), (4.5, true)];

    private static readonly byte[] LogarithmOfLight =
        [.. Enumerable.Range(0, 256).Select(level => (byte)Math.Round(255 * Math.Log(1 + (level / DarkLevel)) / Math.Log(1 + (255 / DarkLevel))))];

    private const double DarkLevel = 12;

    /// <summary>Finds the tags.</summary>
    /// <param name="grey">H × W, CV_8UC1.</param>
    /// <param name="camera">The camera.</param>
    /// <param name="topLeft">The region's top-left corner on the paper, mm.</param>
    /// <param name="bottomRight">Its bottom-right corner, mm.</param>
    public static IReadOnlyList<StationTag> Find(Mat grey, Camera camera, TargetPoint topLeft, TargetPoint bottomRight)
    {
        TargetPoint[] corners = [topLeft, new(bottomRight.XMm, topLeft.YMm), bottomRight, new(topLeft.XMm, bottomRight.YMm)];
        var seen = Array.ConvertAll(corners, c => camera.Project(c, 0));
        var region = new Rect(
            (int)seen.Min(p => p.X) - 4, (int)seen.Min(p => p.Y) - 4,
            (int)(seen.Max(p => p.X) - seen.Min(p => p.X)) + 9, (int)(seen.Max(p => p.Y) - seen.Min(p => p.Y)) + 9)
            .Intersect(new Rect(0, 0, grey.Width, grey.Height));
        if (region.Width < 50 || region.Height < 50)
        {
            return [];
        }

        var middle = new TargetPoint((topLeft.XMm + bottomRight.XMm) / 2, (topLeft.YMm + bottomRight.YMm) / 2);
        using var part = new Mat(grey, region);
        var tags = new List<StationTag>();
        foreach (var (wanted, isShaded) in Searches)
        {
            var shrink = Math.Max(1, 1 / camera.MillimetresPerPixel(middle, 0) / wanted);
            FindIn(part, region, shrink, isShaded, grey, camera, tags);
        }

        return tags;
    }

    private static void FindIn(Mat part, Rect region, double shrink, bool isShaded, Mat grey, Camera camera, List<StationTag> tags)
    {
        using var small = new Mat();
        Cv2.Resize(part, small, new Size((int)(region.Width / shrink), (int)(region.Height / shrink)), 0, 0, InterpolationFlags.Area);
        if (isShaded)
        {
            Cv2.LUT(small, LogarithmOfLight, small);
        }

        var (scaleX, scaleY) = (region.Width / (double)small.Width, region.Height / (double)small.Height);
        foreach (var (id, pixels) in MarkerFinder.Find(small, PredefinedDictionaryType.DictAprilTag_36h11))
        {
            var rough = Array.ConvertAll(pixels, p => new Point2f(
                (float)(((p.X + 0.5) * scaleX) - 0.5 + region.X), (float)(((p.Y + 0.5) * scaleY) - 0.5 + region.Y)));
            var places = Array.ConvertAll(Sharpen(grey, rough), p => camera.BackProject(new(p.X, p.Y), 0));
            var sides = Enumerable.Range(0, 4).Select(i => places[i].DistanceTo(places[(i + 1) % 4])).ToArray();
            if (sides.All(s => Math.Abs(s - TagSideMm) < SideToleranceMm) && tags.All(t => t.Centre.DistanceTo(places[0]) > TagSideMm))
            {
                tags.Add(new(id, places));
            }
        }
    }

    /// <summary>Corners below the pixel: up must be known to a tenth of a degree, since a width turns with it.</summary>
    private static Point2f[] Sharpen(Mat grey, Point2f[] corners)
    {
        var side = Math.Sqrt(Math.Pow(corners[0].X - corners[1].X, 2) + Math.Pow(corners[0].Y - corners[1].Y, 2));
        var half = (int)Math.Clamp(side / 20, 2, 8);
        var margin = half + 3;
        if (corners.Any(c => c.X < margin || c.Y < margin || c.X > grey.Width - margin || c.Y > grey.Height - margin))
        {
            return corners;
        }

        return Cv2.CornerSubPix(
            grey, corners, new Size(half, half), new Size(-1, -1), new TermCriteria(CriteriaTypes.Eps | CriteriaTypes.MaxIter, 40, 0.005));
    }
}
