using OpenCvSharp;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Checkerboards;

/// <summary>Places of a picture that look like the meeting of two dark and two light squares.</summary>
internal static class SaddleCandidates
{
    // The ring that is looked at round a candidate, px of the working picture: inside a square of 15 px.
    private const double RingPx = 5.6;
    private const double RingShareOfSquare = 0.09;

    // Strength of a saddle goes with the square of the contrast: down to an eighth of the best contrast.
    private const double LeastStrength = 1.0 / 64;
    private const int MostCandidates = 6000;

    /// <summary>Finds the candidates.</summary>
    /// <param name="grey">The working picture, H × W, CV_8UC1, its longer side about 1400 px.</param>
    /// <returns>Refined places, strongest first.</returns>
    public static IReadOnlyList<PixelPoint> Find(Mat grey)
    {
        using var strength = Strength(grey);
        Cv2.MinMaxLoc(strength, out double _, out var strongest);
        using var kernel = Cv2.GetStructuringElement(MorphShapes.Rect, new Size(9, 9));
        using var peaks = new Mat();
        Cv2.Dilate(strength, peaks, kernel);
        var found = new List<(float Strength, Point2f At)>();
        var (value, peak) = (strength.GetUnsafeGenericIndexer<float>(), peaks.GetUnsafeGenericIndexer<float>());
        var (rows, columns) = (grey.Rows, grey.Cols);
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var s = value[row, column];
                if (s >= peak[row, column] && s > LeastStrength * strongest
                    && SaddleCheck.IsInside(grey, new(column, row), RingPx / RingShareOfSquare))
                {
                    found.Add((s, new(column, row)));
                }
            }
        }

        if (found.Count == 0)
        {
            return [];
        }

        var refined = Cv2.CornerSubPix(
            grey, [.. found.OrderByDescending(f => f.Strength).Take(MostCandidates).Select(f => f.At)], new Size(4, 4), new Size(-1, -1),
            new TermCriteria(CriteriaTypes.Eps | CriteriaTypes.MaxIter, 30, 0.01));
        var kept = new List<PixelPoint>();
        foreach (var p in refined)
        {
            var at = new PixelPoint(p.X, p.Y);
            if (SaddleCheck.IsInside(grey, at, RingPx / RingShareOfSquare) && SaddleCheck.IsSaddle(grey, at, RingPx / RingShareOfSquare)
                && kept.All(k => k.DistanceTo(at) > 4))
            {
                kept.Add(at);
            }
        }

        return kept;
    }

    /// <summary>Ixy² − Ixx·Iyy of the smoothed picture: the negative determinant of the Hessian, largest at saddles.</summary>
    private static Mat Strength(Mat grey)
    {
        using var smooth = new Mat();
        grey.ConvertTo(smooth, MatType.CV_32FC1);
        Cv2.GaussianBlur(smooth, smooth, new Size(0, 0), 1.8);
        using var xx = new Mat();
        using var yy = new Mat();
        using var xy = new Mat();
        Cv2.Sobel(smooth, xx, MatType.CV_32F, 2, 0);
        Cv2.Sobel(smooth, yy, MatType.CV_32F, 0, 2);
        Cv2.Sobel(smooth, xy, MatType.CV_32F, 1, 1);
        using var mixed = new Mat();
        Cv2.Multiply(xy, xy, mixed);
        using var straight = new Mat();
        Cv2.Multiply(xx, yy, straight);
        var strength = new Mat();

        // The kernels [1 −2 1]·[1 2 1] and [−1 0 1]·[−1 0 1] both give four times the derivative.
        Cv2.AddWeighted(mixed, 1, straight, -1, 0, strength);
        return strength;
    }
}
