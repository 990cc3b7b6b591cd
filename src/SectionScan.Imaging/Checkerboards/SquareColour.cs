using OpenCvSharp;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Checkerboards;

/// <summary>Which of the two diagonals of a saddle is the light one: it alternates from corner to corner of a chessboard.</summary>
internal static class SquareColour
{
    // How far into the four squares is looked, as a share of half their diagonal.
    private const double Reach = 0.3;

    /// <summary>+1 when the squares along u + v are light, −1 when those along u − v are, 0 when neither.</summary>
    public static int Sign(Mat grey, PixelPoint at, (double X, double Y) u, (double X, double Y) v)
    {
        var (sx, sy) = (Reach * (u.X + v.X) / 2, Reach * (u.Y + v.Y) / 2);
        var (dx, dy) = (Reach * (u.X - v.X) / 2, Reach * (u.Y - v.Y) / 2);
        double[] along = [Level(grey, at.X + sx, at.Y + sy), Level(grey, at.X - sx, at.Y - sy)];
        double[] across = [Level(grey, at.X + dx, at.Y + dy), Level(grey, at.X - dx, at.Y - dy)];
        return along.Min() > across.Max() ? 1 : across.Min() > along.Max() ? -1 : 0;
    }

    private static double Level(Mat grey, double x, double y)
    {
        var (column, row) = (Math.Clamp((int)Math.Round(x), 0, grey.Cols - 1), Math.Clamp((int)Math.Round(y), 0, grey.Rows - 1));
        return grey.At<byte>(row, column);
    }
}
