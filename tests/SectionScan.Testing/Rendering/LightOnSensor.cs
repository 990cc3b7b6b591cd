using System.Runtime.InteropServices;
using OpenCvSharp;

namespace SectionScan.Testing.Rendering;

/// <summary>The linear light that falls on each pixel of the sensor, paper at 1 where it is lit evenly.</summary>
public static class LightOnSensor
{
    private const int Samples = 64;
    private static readonly (double X, double Y)[] Net = MakeNet();

    /// <summary>Renders the scene as sharp as the pixels allow: each value is the mean over the pixel's square.</summary>
    /// <returns>Height × width × 3 floats in the order blue, green, red. The caller disposes it.</returns>
    public static Mat Render(PhotoScene scene)
    {
        ArgumentNullException.ThrowIfNull(scene);
        var geometry = new SceneGeometry(scene);
        var rays = new RayField(scene.SensorCamera, scene.WidthPx, scene.HeightPx);
        var shader = new SceneShader(scene, geometry);
        var image = new Mat(scene.HeightPx, scene.WidthPx, MatType.CV_32FC3);

        const int Band = 16;
        Parallel.For(0, (scene.HeightPx + Band - 1) / Band, band =>
            RenderBand(scene, geometry, rays, shader, image, band * Band, Math.Min(scene.HeightPx, (band + 1) * Band)));
        return image;
    }

    private static void RenderBand(
        PhotoScene scene, SceneGeometry geometry, RayField rays, SceneShader shader, Mat image, int firstRow, int endRow)
    {
        var width = scene.WidthPx;
        var gain = 1 / (shader.PaperLight * SceneShader.Paper.G);
        var upper = new CornerRow(width);
        var lower = new CornerRow(width);
        lower.Fill(rays, geometry, firstRow);
        for (var row = firstRow; row < endRow; row++)
        {
            (upper, lower) = (lower, upper);
            lower.Fill(rays, geometry, row + 1);
            var line = MemoryMarshal.Cast<byte, Vec3f>(RowOf(image, row));
            for (var column = 0; column < width; column++)
            {
                var element = upper.Elements[column];
                LinearColour light;
                if (element == upper.Elements[column + 1] && element == lower.Elements[column] && element == lower.Elements[column + 1])
                {
                    var sx = 0.25 * (upper.SlopeX(column) + upper.SlopeX(column + 1) + lower.SlopeX(column) + lower.SlopeX(column + 1));
                    var sy = 0.25 * (upper.SlopeY(column) + upper.SlopeY(column + 1) + lower.SlopeY(column) + lower.SlopeY(column + 1));
                    element = geometry.Trace(sx, sy, out var x, out var y, out var h);
                    light = shader.Shade(element, x, y, h);
                }
                else
                {
                    light = Mixed(geometry, shader, upper, lower, column, Noise.Hash((uint)column, (uint)row, (uint)scene.Seed));
                }

                line[column] = new(light.B * gain, light.G * gain, light.R * gain);
            }
        }
    }

    // An edge crosses the pixel: how much of its square shows what, each shaded once at its mean place.
    private static LinearColour Mixed(SceneGeometry geometry, SceneShader shader, CornerRow upper, CornerRow lower, int column, uint scramble)
    {
        const int MostElements = 8;
        Span<int> elements = stackalloc int[MostElements];
        Span<double> sums = stackalloc double[MostElements * 4];
        var count = 0;
        var (shiftX, shiftY) = ((int)(scramble & 63), (int)((scramble >> 8) & 63));
        var (ax, ay) = (upper.SlopeX(column), upper.SlopeY(column));
        var (bx, by) = (upper.SlopeX(column + 1) - ax, upper.SlopeY(column + 1) - ay);
        var (cx, cy) = (lower.SlopeX(column) - ax, lower.SlopeY(column) - ay);
        for (var n = 0; n < Samples; n++)
        {
            // An exclusive-or of the digits keeps the net a net and makes pixels differ.
            var u = (((int)Net[n].X ^ shiftX) + 0.5) / Samples;
            var v = (((int)Net[n].Y ^ shiftY) + 0.5) / Samples;
            var element = geometry.Trace(ax + (u * bx) + (v * cx), ay + (u * by) + (v * cy), out var x, out var y, out var h);
            var k = 0;
            while (k < count && elements[k] != element)
            {
                k++;
            }

            if (k == count)
            {
                if (count == MostElements)
                {
                    continue;
                }

                elements[count++] = element;
            }

            sums[4 * k] += x;
            sums[(4 * k) + 1] += y;
            sums[(4 * k) + 2] += h;
            sums[(4 * k) + 3]++;
        }

        var light = default(LinearColour);
        for (var k = 0; k < count; k++)
        {
            var weight = sums[(4 * k) + 3];
            light += shader.Shade(elements[k], sums[4 * k] / weight, sums[(4 * k) + 1] / weight, sums[(4 * k) + 2] / weight)
                * (float)(weight / Samples);
        }

        return light;
    }

    private static unsafe Span<byte> RowOf(Mat image, int row) => new(image.Ptr(row).ToPointer(), checked((int)image.Step()));

    // Hammersley's set of 64 points: in every row and every column of a 64 × 64 raster one point.
    private static (double X, double Y)[] MakeNet()
    {
        var net = new (double, double)[Samples];
        for (var n = 0; n < Samples; n++)
        {
            var reversed = 0;
            for (var bit = 0; bit < 6; bit++)
            {
                reversed |= ((n >> bit) & 1) << (5 - bit);
            }

            net[n] = (n, reversed);
        }

        return net;
    }

    private sealed class CornerRow(int width)
    {
        private readonly double[] slopes = new double[2 * (width + 1)];

        public int[] Elements { get; } = new int[width + 1];

        public double SlopeX(int corner) => slopes[2 * corner];

        public double SlopeY(int corner) => slopes[(2 * corner) + 1];

        public void Fill(RayField rays, SceneGeometry geometry, int cornerRow)
        {
            rays.FillCornerRow(cornerRow, slopes);
            for (var k = 0; k < Elements.Length; k++)
            {
                Elements[k] = geometry.Trace(SlopeX(k), SlopeY(k), out _, out _, out _);
            }
        }
    }
}
