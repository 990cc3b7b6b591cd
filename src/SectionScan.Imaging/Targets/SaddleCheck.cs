using OpenCvSharp;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Targets;

/// <summary>Whether a place in the picture really is a saddle: two dark and two light quarters, crosswise. Something that lies on
/// the target fails.</summary>
internal static class SaddleCheck
{
    // Contrast below which black ink and paper cannot be told apart reliably, grey levels of 255.
    private const double LeastContrast = 18;
    private const double Reach = 0.09;

    /// <summary>True when the whole neighbourhood of the saddle lies in the picture.</summary>
    public static bool IsInside(Mat grey, PixelPoint at, double squarePx)
    {
        var margin = (squarePx / 8) + 3;
        return at.X >= margin && at.Y >= margin && at.X < grey.Width - margin && at.Y < grey.Height - margin;
    }

    /// <summary>True when the four quarters round the place alternate between dark and light all round two small circles.</summary>
    public static bool IsSaddle(Mat grey, PixelPoint at, double squarePx) =>
        Alternates(grey, at, Reach * squarePx) && Alternates(grey, at, Reach * squarePx * 0.7);

    private static bool Alternates(Mat grey, PixelPoint at, double radiusPx)
    {
        const int Steps = 32;
        var pixels = grey.GetUnsafeGenericIndexer<byte>();
        Span<double> ring = stackalloc double[Steps];
        double least = 255, most = 0;
        for (var i = 0; i < Steps; i++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / Steps);
            ring[i] = pixels[(int)Math.Round(at.Y + (radiusPx * sin)), (int)Math.Round(at.X + (radiusPx * cos))];
            least = Math.Min(least, ring[i]);
            most = Math.Max(most, ring[i]);
        }

        if (most - least < LeastContrast)
        {
            return false;
        }

        // Second harmonic against everything else: a saddle's ring is dark, light, dark, light.
        var middle = (most + least) / 2;
        var changes = 0;
        double balance = 0;
        for (var i = 0; i < Steps; i++)
        {
            var dark = ring[i] < middle;
            changes += dark != (ring[(i + 1) % Steps] < middle) ? 1 : 0;
            balance += dark ? 1 : -1;
        }

        return changes == 4 && Math.Abs(balance) <= Steps * 0.5;
    }
}
