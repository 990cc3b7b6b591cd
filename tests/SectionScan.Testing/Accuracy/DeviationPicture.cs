using OpenCvSharp;
using SectionScan.Metrology.Frames;
using SectionScan.Testing.Truth;

namespace SectionScan.Testing.Accuracy;

/// <summary>The worst place of each outline, enlarged, with the true outline (green) and the measured one (magenta) over it.</summary>
public static class DeviationPicture
{
    private const int Enlargement = 8;
    private const int HalfPx = 48;

    /// <summary>Draws the places of one photo whose deviation is more than <paramref name="fromMm"/>, side by side.</summary>
    /// <returns>A PNG file's bytes, or null when no place deviates that much.</returns>
    public static byte[]? Draw(string path, PhotoTruth truth, PhotoVerdict verdict, double fromMm)
    {
        ArgumentNullException.ThrowIfNull(truth);
        ArgumentNullException.ThrowIfNull(verdict);
        var bad = verdict.Found.Where(f => f.Score.AsPlaced?.MaximumMm > fromMm).ToArray();
        if (bad.Length == 0)
        {
            return null;
        }

        using var photo = Cv2.ImRead(path, ImreadModes.Color);
        using var row = new Mat(2 * HalfPx * Enlargement, 2 * HalfPx * Enlargement * bad.Length, MatType.CV_8UC3, Scalar.All(255));
        for (var i = 0; i < bad.Length; i++)
        {
            using var place = Place(photo, truth, bad[i]);
            using var target = new Mat(row, new Rect(2 * HalfPx * Enlargement * i, 0, place.Width, place.Height));
            place.CopyTo(target);
        }

        return row.ImEncode(".png");
    }

    private static Mat Place(Mat photo, PhotoTruth truth, FoundSection found)
    {
        PixelPoint[] trueEdge = Array.ConvertAll(found.Truth.PlacedOutline, p => truth.Camera.Project(p, found.Truth.ThicknessMm));
        var measured = found.Section.DisplayedPixels;
        var worst = trueEdge.MaxBy(p => DistancePx(p, measured));
        using var padded = new Mat();
        Cv2.CopyMakeBorder(photo, padded, HalfPx, HalfPx, HalfPx, HalfPx, BorderTypes.Replicate);
        var (x, y) = (Math.Clamp((int)worst.X, 0, photo.Width - 1), Math.Clamp((int)worst.Y, 0, photo.Height - 1));
        using var cut = new Mat(padded, new Rect(x, y, 2 * HalfPx, 2 * HalfPx));
        var place = new Mat();
        Cv2.Resize(cut, place, new Size(), Enlargement, Enlargement, InterpolationFlags.Nearest);
        Line(place, trueEdge, new Scalar(0, 230, 0));
        Line(place, measured, new Scalar(255, 0, 255));
        Cv2.PutText(
            place, FormattableString.Invariant($"{found.Truth.Name}: {found.Score.AsPlaced!.MaximumMm:0.00} mm"), new Point(8, 30),
            HersheyFonts.HersheySimplex, 0.8, Scalar.All(255), 2, LineTypes.AntiAlias);
        return place;

        void Line(Mat on, IReadOnlyList<PixelPoint> edge, Scalar colour)
        {
            const int Shift = 4;
            var line = edge.Select(p => new Point(Placed(p.X - x), Placed(p.Y - y)));
            Cv2.Polylines(on, [line], true, colour, 1, LineTypes.AntiAlias, Shift);

            static int Placed(double px) => (int)Math.Round((((px + HalfPx + 0.5) * Enlargement) - 0.5) * (1 << Shift));
        }
    }

    private static double DistancePx(PixelPoint p, IReadOnlyList<PixelPoint> edge)
    {
        var least = double.MaxValue;
        foreach (var q in edge)
        {
            least = Math.Min(least, ((p.X - q.X) * (p.X - q.X)) + ((p.Y - q.Y) * (p.Y - q.Y)));
        }

        return least;
    }
}
