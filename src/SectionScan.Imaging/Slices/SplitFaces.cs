using OpenCvSharp;
using SectionScan.Imaging.Grounds;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Slices;

/// <summary>Joins what a deep saw mark or a stain has split: parts that lie close together and make up one round whole.</summary>
internal static class SplitFaces
{
    private const double GapMm = 2;

    // Two slices that touch fill at most 0.9 of their common hull, unless one is very small; a face that is split fills nearly all of it.
    private const double LeastSolidity = 0.94;

    private const double LeastPartSolidity = 0.85;

    // In feature bytes: 0.2 of ln(light).
    private const int LightTolerance = 16;

    /// <summary>Joins parts.</summary>
    /// <param name="parts">The faces found.</param>
    /// <param name="features">The window's features, light first.</param>
    /// <param name="view">The view that they were made from.</param>
    public static IReadOnlyList<RoughSlice> Join(IReadOnlyList<RoughSlice> parts, Mat features, PlaneView view)
    {
        var whole = parts.ToList();
        for (var i = 0; i < whole.Count; i++)
        {
            for (var k = i + 1; k < whole.Count; k++)
            {
                if (Together(whole[i], whole[k]) is { } joined && Math.Abs(Light(whole[i]) - Light(whole[k])) < LightTolerance)
                {
                    whole[i] = joined;
                    whole.RemoveAt(k);
                    k = i;
                }
            }
        }

        return whole;

        double Light(RoughSlice part)
        {
            using var inside = new Mat(features.Size(), MatType.CV_8UC1, new Scalar(0));
            Cv2.FillPoly(inside, [part.Rim.Select(view.CellOf)], new Scalar(255));
            return Cv2.Mean(features, inside).Val0;
        }
    }

    /// <summary>A lit wall or a shadow lies round a face as a crescent.</summary>
    private static bool IsCrescent(RoughSlice part) => part.AreaMm2 < LeastPartSolidity * Cv2.ContourArea(Hull(part.Rim));

    private static Point2f[] Hull(IReadOnlyList<TargetPoint> rim) => Cv2.ConvexHull(rim.Select(p => new Point2f((float)p.XMm, (float)p.YMm)));

    private static RoughSlice? Together(RoughSlice one, RoughSlice other)
    {
        if (!one.Rim.Any(p => other.Rim.Any(q => p.DistanceTo(q) < GapMm)))
        {
            return null;
        }

        var hull = Hull([.. one.Rim, .. other.Rim]);
        var area = Cv2.ContourArea(hull);
        var isRound = one.AreaMm2 + other.AreaMm2 >= LeastSolidity * area;
        return !isRound || IsCrescent(one) || IsCrescent(other)
            ? null
            : new(Array.ConvertAll(hull, p => new TargetPoint(p.X, p.Y)), area, one.TouchesWindow || other.TouchesWindow);
    }
}
