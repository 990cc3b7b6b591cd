using System.Runtime.InteropServices;
using OpenCvSharp;

namespace SectionScan.Testing.Rendering;

/// <summary>From light on the sensor to an 8-bit picture, step by step as a phone does it.</summary>
internal static class PhotoDeveloper
{
    private const float PaperLevel = 0.72f;

    /// <summary>Develops in place and gives the picture (blue, green, red); the caller disposes it.</summary>
    public static Mat Develop(Mat light, DevelopSettings settings, int seed)
    {
        if (settings.BlurSigmaPx > 0)
        {
            Cv2.GaussianBlur(light, light, new Size(0, 0), settings.BlurSigmaPx, settings.BlurSigmaPx, BorderTypes.Replicate);
        }

        if (settings.MotionPx > 0)
        {
            using var kernel = MotionKernel(settings.MotionPx, settings.MotionDegrees);
            Cv2.Filter2D(light, light, -1, kernel, borderType: BorderTypes.Replicate);
        }

        Expose(light, settings, seed);
        if (settings.Bayer)
        {
            using var mosaic = Mosaic(light);
            Demosaic(mosaic, light);
        }

        ToneMap(light, settings.SCurve);
        if (settings.Sharpening > 0)
        {
            // On coded values, as phones do: the halo on the bright side of an edge is then the stronger one in linear light.
            using var smooth = new Mat();
            Cv2.GaussianBlur(light, smooth, new Size(0, 0), 1, 1, BorderTypes.Replicate);
            Cv2.AddWeighted(light, 1 + settings.Sharpening, smooth, -settings.Sharpening, 0, light);
        }

        var picture = new Mat();
        light.ConvertTo(picture, MatType.CV_8UC3, 255);
        return picture;
    }

    private static void Expose(Mat light, DevelopSettings settings, int seed)
    {
        var (width, height) = (light.Cols, light.Rows);
        var gain = (float)(PaperLevel * settings.Exposure);
        var (shot, read) = ((float)(settings.ShotNoise * settings.ShotNoise), (float)(settings.ReadNoise * settings.ReadNoise));
        var isNoisy = shot > 0 || read > 0;
        var perRadius2 = 4f / ((width * width) + (height * (float)height));
        var vignette = (float)settings.Vignette;
        Parallel.For(0, height, row =>
        {
            var line = Row<Vec3f>(light, row);
            var dy = row - (height / 2f);
            for (var column = 0; column < width; column++)
            {
                var dx = column - (width / 2f);
                var r2 = ((dx * dx) + (dy * dy)) * perRadius2;
                var g = gain * (1 - (vignette * r2 * (0.6f + (0.4f * r2))));
                var p = line[column];
                (p.Item0, p.Item1, p.Item2) = (p.Item0 * g, p.Item1 * g, p.Item2 * g);
                if (isNoisy)
                {
                    // With a mosaic only one of the three is kept, so each pixel has one draw; without it, three.
                    p.Item0 = Noisy(p.Item0, Noise.Hash((uint)column, (uint)row, (uint)seed ^ 0xB1u));
                    p.Item1 = Noisy(p.Item1, Noise.Hash((uint)column, (uint)row, (uint)seed ^ 0x91u));
                    p.Item2 = Noisy(p.Item2, Noise.Hash((uint)column, (uint)row, (uint)seed ^ 0x81u));
                }

                // The sensor's well is full at 1.
                line[column] = new(Math.Min(p.Item0, 1), Math.Min(p.Item1, 1), Math.Min(p.Item2, 1));
            }
        });

        float Noisy(float value, uint hash) => value + (MathF.Sqrt(read + (shot * Math.Max(value, 0))) * Noise.NormalOf(hash));
    }

    // Rows of red and green, then of green and blue.
    private static Mat Mosaic(Mat light)
    {
        var mosaic = new Mat(light.Rows, light.Cols, MatType.CV_32FC1);
        Parallel.For(0, light.Rows, row =>
        {
            var from = Row<Vec3f>(light, row);
            var to = Row<float>(mosaic, row);
            for (var column = 0; column < to.Length; column++)
            {
                to[column] = (row & 1) == 0
                    ? (column & 1) == 0 ? from[column].Item2 : from[column].Item1
                    : (column & 1) == 0 ? from[column].Item1 : from[column].Item0;
            }
        });
        return mosaic;
    }

    private static void Demosaic(Mat mosaic, Mat into)
    {
        var (width, height) = (mosaic.Cols, mosaic.Rows);
        Parallel.For(0, height, row =>
        {
            // Mirrored at the rim, which keeps the colours of the rows in step.
            var above = Row<float>(mosaic, row == 0 ? 1 : row - 1);
            var here = Row<float>(mosaic, row);
            var below = Row<float>(mosaic, row == height - 1 ? height - 2 : row + 1);
            var to = Row<Vec3f>(into, row);
            for (var column = 0; column < width; column++)
            {
                var left = column == 0 ? 1 : column - 1;
                var right = column == width - 1 ? width - 2 : column + 1;
                var cross = (above[column] + below[column] + here[left] + here[right]) / 4;
                var diagonal = (above[left] + above[right] + below[left] + below[right]) / 4;
                var level = (here[left] + here[right]) / 2;
                var upright = (above[column] + below[column]) / 2;
                to[column] = (((row & 1) * 2) + (column & 1)) switch
                {
                    0 => new Vec3f(diagonal, cross, here[column]),
                    1 => new Vec3f(upright, here[column], level),
                    2 => new Vec3f(level, here[column], upright),
                    _ => new Vec3f(here[column], cross, diagonal),
                };
            }
        });
    }

    private static void ToneMap(Mat light, double sCurve)
    {
        const int Levels = 16384;
        var curve = new float[Levels + 1];
        for (var k = 0; k <= Levels; k++)
        {
            var linear = (double)k / Levels;
            var coded = linear <= 0.0031308 ? 12.92 * linear : (1.055 * Math.Pow(linear, 1 / 2.4)) - 0.055;
            var bent = coded + (sCurve * ((coded * coded * (3 - (2 * coded))) - coded));
            curve[k] = (float)bent;
        }

        Parallel.For(0, light.Rows, row =>
        {
            var line = Row<float>(light, row);
            for (var k = 0; k < line.Length; k++)
            {
                line[k] = curve[(int)((Math.Clamp(line[k], 0, 1) * Levels) + 0.5f)];
            }
        });
    }

    private static Mat MotionKernel(double lengthPx, double degrees)
    {
        var half = (int)Math.Ceiling(lengthPx / 2) + 1;
        var kernel = new Mat((2 * half) + 1, (2 * half) + 1, MatType.CV_32FC1, Scalar.All(0));
        var (sin, cos) = Math.SinCos(double.DegreesToRadians(degrees));
        const int Points = 400;
        for (var k = 0; k < Points; k++)
        {
            var along = lengthPx * (((k + 0.5) / Points) - 0.5);
            var (x, y) = (half + (along * cos), half + (along * sin));
            var (ix, iy) = ((int)x, (int)y);
            var (fx, fy) = (x - ix, y - iy);
            kernel.At<float>(iy, ix) += (float)((1 - fx) * (1 - fy) / Points);
            kernel.At<float>(iy, ix + 1) += (float)(fx * (1 - fy) / Points);
            kernel.At<float>(iy + 1, ix) += (float)((1 - fx) * fy / Points);
            kernel.At<float>(iy + 1, ix + 1) += (float)(fx * fy / Points);
        }

        return kernel;
    }

    private static unsafe Span<T> Row<T>(Mat image, int row)
        where T : struct => MemoryMarshal.Cast<byte, T>(new Span<byte>(image.Ptr(row).ToPointer(), image.Cols * image.ElemSize()));
}
