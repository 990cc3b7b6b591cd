using OpenCvSharp;
using SectionScan.Metrology.Cameras;

namespace SectionScan.Imaging.Targets;

/// <summary>How blurred a photo is, read off the edges between the target's squares.</summary>
internal static class TargetBlur
{
    // Between the edge and the marker's border there is an eighth of a square; the profile must not reach it.
    private const double ReachShare = 0.11;
    private const int Steps = 64;
    private const int Lines = 9;

    /// <summary>The standard deviation of the blur, px: the median over the edges midway between neighbouring saddle points.</summary>
    /// <param name="grey">H × W, CV_8UC1.</param>
    /// <param name="sighting">The target's saddle points.</param>
    /// <returns>Blur wider than about a tenth of a square comes out as about that; zero when no two neighbours are seen.</returns>
    public static double Px(Mat grey, TargetSighting sighting)
    {
        var blurs = new List<double>();
        foreach (var a in sighting.Points)
        {
            foreach (var b in sighting.Points)
            {
                var isNext = Math.Abs(a.Target.DistanceTo(b.Target) - sighting.Target.SquareMm) < 0.01 * sighting.Target.SquareMm;
                if (isNext && (a.Target.XMm < b.Target.XMm - 0.01 || a.Target.YMm < b.Target.YMm - 0.01))
                {
                    blurs.Add(BlurOf(Profile(grey, a, b), a.Pixel.DistanceTo(b.Pixel) * ReachShare));
                }
            }
        }

        blurs.Sort();
        return blurs.Count == 0 ? 0 : blurs[blurs.Count / 2];
    }

    /// <summary>Grey values across the edge from a to b, averaged over a stretch in its middle.</summary>
    private static double[] Profile(Mat grey, SightedPoint a, SightedPoint b)
    {
        var (x, y) = (b.Pixel.X - a.Pixel.X, b.Pixel.Y - a.Pixel.Y);
        var profile = new double[Steps + 1];
        for (var line = 0; line < Lines; line++)
        {
            var along = 0.4 + (0.2 * line / (Lines - 1));
            for (var step = 0; step <= Steps; step++)
            {
                var across = ReachShare * ((2.0 * step / Steps) - 1);
                profile[step] += ValueAt(grey, a.Pixel.X + (along * x) - (across * y), a.Pixel.Y + (along * y) + (across * x)) / Lines;
            }
        }

        return profile;
    }

    /// <summary>For a blurred step, the levels of 16 and 84 % lie one standard deviation either side of the edge.</summary>
    private static double BlurOf(double[] profile, double reachPx)
    {
        var (from, to) = (profile[0], profile[^1]);
        return (Crossing(0.841) - Crossing(0.159)) / 2;

        double Crossing(double level)
        {
            var step = Array.FindIndex(profile, value => (value - from) / (to - from) >= level);
            var before = (profile[Math.Max(step - 1, 0)] - from) / (to - from);
            var after = (profile[Math.Max(step, 0)] - from) / (to - from);
            var share = after > before ? (level - before) / (after - before) : 0;
            return (step - 1 + share) * 2 * reachPx / Steps;
        }
    }

    private static double ValueAt(Mat grey, double x, double y)
    {
        var (left, top) = (Math.Clamp((int)x, 0, grey.Width - 2), Math.Clamp((int)y, 0, grey.Height - 2));
        var (u, v) = (Math.Clamp(x - left, 0, 1), Math.Clamp(y - top, 0, 1));
        var upper = ((1 - u) * grey.Get<byte>(top, left)) + (u * grey.Get<byte>(top, left + 1));
        var lower = ((1 - u) * grey.Get<byte>(top + 1, left)) + (u * grey.Get<byte>(top + 1, left + 1));
        return ((1 - v) * upper) + (v * lower);
    }
}
