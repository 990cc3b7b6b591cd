using OpenCvSharp;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Tests.Scales;

/// <summary>Pictures of flat things on a plane, each pixel the mean light of its nine parts, as sRGB: exact truth without a renderer.</summary>
internal static class FlatPicture
{
    private const int Parts = 3;

    /// <summary>A camera without distortion over the plane.</summary>
    public static Camera CameraOver(double xMm, double yMm, double distanceMm, double tiltDegrees, double towardDegrees) => new(
        new(1900, 1900, 799.5, 599.5, 0, 0, 0, 0, 0),
        Testing.Rendering.CameraPlacing.LookAt(xMm, yMm, distanceMm, tiltDegrees, towardDegrees, 0));

    /// <summary>Draws a plane of 1600 × 1200 px as a camera without distortion sees it.</summary>
    /// <param name="camera">The camera.</param>
    /// <param name="reflectance">Linear light, 0 to 1, at x and y in mm.</param>
    public static Mat Draw(Camera camera, Func<double, double, double> reflectance)
    {
        // Pixel to plane is a homography: three places and the origin of the rays fix it.
        PixelPoint[] pixels = [new(0, 0), new(1599, 0), new(1599, 1199), new(0, 1199)];
        var places = Array.ConvertAll(pixels, p => camera.BackProject(p, 0));
        using var h = Cv2.FindHomography(pixels.Select(p => new Point2d(p.X, p.Y)), places.Select(p => new Point2d(p.XMm, p.YMm)));
        double[] m = [.. Enumerable.Range(0, 9).Select(i => h.At<double>(i / 3, i % 3))];
        return Draw(1600, 1200, (u, v) =>
        {
            var w = (m[6] * u) + (m[7] * v) + m[8];
            return reflectance(((m[0] * u) + (m[1] * v) + m[2]) / w, ((m[3] * u) + (m[4] * v) + m[5]) / w);
        });
    }

    /// <summary>Draws a picture pixel by pixel.</summary>
    public static Mat Draw(int width, int height, Func<double, double, double> lightAt)
    {
        using var light = new Mat(height, width, MatType.CV_32FC1);
        var cells = light.GetUnsafeGenericIndexer<float>();
        Parallel.For(0, height, row =>
        {
            for (var column = 0; column < width; column++)
            {
                double sum = 0;
                for (var part = 0; part < Parts * Parts; part++)
                {
                    sum += lightAt(column + (((part % Parts) - 1.0) / Parts), row + (((part / Parts) - 1.0) / Parts));
                }

                cells[row, column] = (float)(sum / (Parts * Parts));
            }
        });
        Cv2.GaussianBlur(light, light, new Size(0, 0), 0.8);
        var picture = new Mat(height, width, MatType.CV_8UC3);
        var pixels = picture.GetUnsafeGenericIndexer<Vec3b>();
        for (var row = 0; row < height; row++)
        {
            for (var column = 0; column < width; column++)
            {
                // IEC 61966-2-1 (cited from memory).
                var v = cells[row, column];
                var stored = (byte)Math.Round(255 * (v <= 0.0031308 ? 12.92 * v : (1.055 * Math.Pow(v, 1 / 2.4)) - 0.055));
                pixels[row, column] = new(stored, stored, stored);
            }
        }

        return picture;
    }

    /// <summary>Reflectance of a chessboard of squares from (0, 0), black and white, on paper.</summary>
    public static double Board(double x, double y, double squareMm, int columns, int rows)
    {
        var (c, r) = ((int)Math.Floor(x / squareMm), (int)Math.Floor(y / squareMm));
        return c >= 0 && r >= 0 && c < columns && r < rows && (c + r) % 2 == 0 ? 0.04 : 0.75;
    }

    /// <summary>True inside a disc.</summary>
    public static bool Disc(double x, double y, double atX, double atY, double radius) =>
        ((x - atX) * (x - atX)) + ((y - atY) * (y - atY)) < radius * radius;
}
