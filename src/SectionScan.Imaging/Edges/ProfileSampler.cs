using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using OpenCvSharp;
using SectionScan.Imaging.Grounds;
using SectionScan.Imaging.Photos;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Edges;

/// <summary>Reads the photo along lines that stand square on a curve, at the height of the curve's plane.</summary>
internal sealed unsafe class ProfileSampler(Mat colour, Mat grey, Camera camera, double heightMm, GroundModel? paper = null)
{
    private readonly byte* colourData = (byte*)colour.Data;
    private readonly long colourStride = colour.Step();
    private readonly byte* greyData = (byte*)grey.Data;
    private readonly long greyStride = grey.Step();
    private readonly int width = colour.Width;
    private readonly int height = colour.Height;

    /// <summary>The camera.</summary>
    public Camera Camera { get; } = camera;

    /// <summary>The height of the plane above the paper, mm.</summary>
    public double HeightMm { get; } = heightMm;

    /// <summary>The side of a pixel at a place of the plane, mm.</summary>
    public double MillimetresPerPixel(TargetPoint at) => Camera.MillimetresPerPixel(at, HeightMm);

    /// <summary>The stored colour (blue, green, red as 0 to 1, gamma-coded; the fourth number is nothing) that bare, lit paper would have at
    /// a place; null where the paper is not known.</summary>
    public Vector128<float>? PaperColour(TargetPoint at) => paper is null
        ? null
        : Vector128.Create(Stored(at, 2), Stored(at, 1), Stored(at, 0), 0);

    private float Stored(TargetPoint at, int colourOfPaper) => LinearLight.Stored((float)Math.Exp(paper!.LogLight(at, colourOfPaper)));

    /// <summary>Stored colour (blue, green, red as 0 to 1, gamma-coded; the fourth number means nothing) along a normal.</summary>
    /// <param name="at">The foot of the normal, mm.</param>
    /// <param name="normal">Unit vector.</param>
    /// <param name="fromMm">The first place along the normal.</param>
    /// <param name="stepMm">The step.</param>
    /// <param name="values">Gets the colours; its length tells how many places.</param>
    public void ReadColour(TargetPoint at, (double X, double Y) normal, double fromMm, double stepMm, Span<Vector128<float>> values)
    {
        var line = new PixelLine(Camera, HeightMm, at, normal, fromMm, fromMm + (stepMm * (values.Length - 1)));
        for (var k = 0; k < values.Length; k++)
        {
            var (x, y) = line.At(fromMm + (k * stepMm));

            // Four bytes are read of each pixel of three: the picture's last column is left out.
            var (column, row, u, v) = Cell(Math.Min(x, width - 2.001), y);
            var upper = colourData + (row * colourStride) + (3 * column);
            var lower = upper + colourStride;
            var top = Levels(upper) + (u * (Levels(upper + 3) - Levels(upper)));
            var bottom = Levels(lower) + (u * (Levels(lower + 3) - Levels(lower)));
            values[k] = (top + (v * (bottom - top))) * (1 / 255f);
        }
    }

    /// <summary>Luminance in linear light, 0 to 1, along a normal; see <see cref="ReadColour"/>.</summary>
    public void ReadLight(TargetPoint at, (double X, double Y) normal, double fromMm, double stepMm, Span<float> values)
    {
        var line = new PixelLine(Camera, HeightMm, at, normal, fromMm, fromMm + (stepMm * (values.Length - 1)));
        var table = LinearLight.OfStored;
        for (var k = 0; k < values.Length; k++)
        {
            var (x, y) = line.At(fromMm + (k * stepMm));
            var (column, row, u, v) = Cell(x, y);
            var upper = greyData + (row * greyStride) + column;
            var lower = upper + greyStride;
            var top = table[upper[0]] + (u * (table[upper[1]] - table[upper[0]]));
            var bottom = table[lower[0]] + (u * (table[lower[1]] - table[lower[0]]));
            values[k] = top + (v * (bottom - top));
        }
    }

    /// <summary>Red less green and blue less green of the stored (gamma-coded) values along a normal; see <see cref="ReadColour"/>. A
    /// shadow on white paper changes light a lot and these hardly. Stored values, because that is where the file keeps colour at half
    /// resolution: in linear light its blur would lean to the brighter side.</summary>
    /// <param name="at">The foot of the normal, mm.</param>
    /// <param name="normal">Unit vector.</param>
    /// <param name="fromMm">The first place along the normal.</param>
    /// <param name="stepMm">The step.</param>
    /// <param name="values">Gets two numbers a place.</param>
    public void ReadTint(TargetPoint at, (double X, double Y) normal, double fromMm, double stepMm, Span<float> values)
    {
        var line = new PixelLine(Camera, HeightMm, at, normal, fromMm, fromMm + (stepMm * ((values.Length / 2) - 1)));
        for (var k = 0; k < values.Length / 2; k++)
        {
            var (x, y) = line.At(fromMm + (k * stepMm));
            var (column, row, u, v) = Cell(x, y);
            var upper = colourData + (row * colourStride) + (3 * column);
            var lower = upper + colourStride;
            var (a, b, c, d) = ((1 - u) * (1 - v), u * (1 - v), (1 - u) * v, u * v);
            values[2 * k] = ((a * (upper[2] - upper[1])) + (b * (upper[5] - upper[4])) + (c * (lower[2] - lower[1])) + (d * (lower[5] - lower[4]))) / 255f;
            values[(2 * k) + 1] = ((a * (upper[0] - upper[1])) + (b * (upper[3] - upper[4])) + (c * (lower[0] - lower[1])) + (d * (lower[3] - lower[4]))) / 255f;
        }
    }

    private static Vector128<float> Levels(byte* pixel) => Vector128.ConvertToSingle(Vector128.WidenLower(
        Vector128.WidenLower(Vector128.CreateScalarUnsafe(Unsafe.ReadUnaligned<uint>(pixel)).AsByte())).AsInt32());

    private (int Column, int Row, float U, float V) Cell(double x, double y)
    {
        x = Math.Clamp(x, 0, width - 1.001);
        y = Math.Clamp(y, 0, height - 1.001);
        var (column, row) = ((int)x, (int)y);
        return (column, row, (float)(x - column), (float)(y - row));
    }

    /// <summary>The picture of a straight line: over a few millimetres a parabola follows perspective and lens to below a
    /// thousandth of a pixel.</summary>
    private readonly struct PixelLine
    {
        private readonly double middle;
        private readonly PixelPoint centre;
        private readonly double x1;
        private readonly double y1;
        private readonly double x2;
        private readonly double y2;

        public PixelLine(Camera camera, double heightMm, TargetPoint at, (double X, double Y) normal, double fromMm, double toMm)
        {
            middle = (fromMm + toMm) / 2;
            var half = Math.Max((toMm - fromMm) / 2, 1e-6);
            centre = Seen(camera, heightMm, at, normal, middle);
            var (first, last) = (Seen(camera, heightMm, at, normal, middle - half), Seen(camera, heightMm, at, normal, middle + half));
            x1 = (last.X - first.X) / (2 * half);
            y1 = (last.Y - first.Y) / (2 * half);
            x2 = (last.X - (2 * centre.X) + first.X) / (2 * half * half);
            y2 = (last.Y - (2 * centre.Y) + first.Y) / (2 * half * half);
        }

        public (double X, double Y) At(double s)
        {
            var d = s - middle;
            return (centre.X + (d * (x1 + (d * x2))), centre.Y + (d * (y1 + (d * y2))));
        }

        private static PixelPoint Seen(Camera camera, double heightMm, TargetPoint at, (double X, double Y) normal, double s) =>
            camera.Project(new(at.XMm + (s * normal.X), at.YMm + (s * normal.Y)), heightMm);
    }
}
