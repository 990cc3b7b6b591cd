using OpenCvSharp;
using SectionScan.Imaging.Photos;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Grounds;

/// <summary>A straight-down view of a rectangle of the target's plane, in linear light: for finding things, not for measuring.</summary>
internal sealed class PlaneView
{
    private PlaneView(TargetPoint corner, double stepMm, int columns, int rows, float[] red, float[] green, float[] blue)
    {
        (Corner, StepMm, Columns, Rows, Red, Green, Blue) = (corner, stepMm, columns, rows, red, green, blue);
    }

    /// <summary>The target place of the middle of cell (0, 0).</summary>
    public TargetPoint Corner { get; }

    /// <summary>Side of a cell, mm.</summary>
    public double StepMm { get; }

    /// <summary>Cells across.</summary>
    public int Columns { get; }

    /// <summary>Cells down.</summary>
    public int Rows { get; }

    /// <summary>Linear red, row by row, 0 to 1; NaN outside the photo.</summary>
    public float[] Red { get; }

    /// <summary>Linear green.</summary>
    public float[] Green { get; }

    /// <summary>Linear blue.</summary>
    public float[] Blue { get; }

    /// <summary>Resamples the photo over a rectangle of the plane of the paper.</summary>
    /// <param name="colour">H × W, CV_8UC3.</param>
    /// <param name="camera">The camera.</param>
    /// <param name="topLeft">The rectangle's top-left corner, mm.</param>
    /// <param name="widthMm">Its width, mm.</param>
    /// <param name="heightMm">Its height, mm.</param>
    /// <param name="stepMm">Side of a cell, mm.</param>
    public static PlaneView Of(Mat colour, Camera camera, TargetPoint topLeft, double widthMm, double heightMm, double stepMm)
    {
        var columns = (int)Math.Round(widthMm / stepMm);
        var rows = (int)Math.Round(heightMm / stepMm);
        var corner = new TargetPoint(topLeft.XMm + (stepMm / 2), topLeft.YMm + (stepMm / 2));
        using var mapX = new Mat(rows, columns, MatType.CV_32FC1);
        using var mapY = new Mat(rows, columns, MatType.CV_32FC1);
        FillMaps(mapX, mapY, camera, corner, stepMm);
        using var view = new Mat();
        Cv2.Remap(colour, view, mapX, mapY, InterpolationFlags.Linear, BorderTypes.Constant, new Scalar(0, 0, 0));
        var (red, green, blue) = (new float[rows * columns], new float[rows * columns], new float[rows * columns]);
        var pixels = view.GetUnsafeGenericIndexer<Vec3b>();
        var (x, y) = (mapX.GetUnsafeGenericIndexer<float>(), mapY.GetUnsafeGenericIndexer<float>());
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var i = (row * columns) + column;
                var inside = x[row, column] >= 0 && y[row, column] >= 0 && x[row, column] <= colour.Width - 1 && y[row, column] <= colour.Height - 1;
                var pixel = pixels[row, column];
                red[i] = inside ? LinearLight.OfStored[pixel.Item2] : float.NaN;
                green[i] = inside ? LinearLight.OfStored[pixel.Item1] : float.NaN;
                blue[i] = inside ? LinearLight.OfStored[pixel.Item0] : float.NaN;
            }
        }

        return new(corner, stepMm, columns, rows, red, green, blue);
    }

    /// <summary>The target place of the middle of a cell, fractions allowed.</summary>
    public TargetPoint PlaceOf(double column, double row) => new(Corner.XMm + (column * StepMm), Corner.YMm + (row * StepMm));

    private static void FillMaps(Mat mapX, Mat mapY, Camera camera, TargetPoint corner, double stepMm)
    {
        // Every eighth place exactly, the others between them: the mapping is smooth to far below a pixel.
        const int Stride = 8;
        var (rows, columns) = (mapX.Rows, mapX.Cols);
        var (x, y) = (mapX.GetUnsafeGenericIndexer<float>(), mapY.GetUnsafeGenericIndexer<float>());
        var knotColumns = ((columns - 1) / Stride) + 2;
        var knotRows = ((rows - 1) / Stride) + 2;
        var knots = new PixelPoint[knotRows * knotColumns];
        for (var r = 0; r < knotRows; r++)
        {
            for (var c = 0; c < knotColumns; c++)
            {
                knots[(r * knotColumns) + c] = camera.Project(
                    new(corner.XMm + (c * Stride * stepMm), corner.YMm + (r * Stride * stepMm)), 0);
            }
        }

        for (var row = 0; row < rows; row++)
        {
            var (r, v) = (row / Stride, row % Stride / (double)Stride);
            for (var column = 0; column < columns; column++)
            {
                var (c, u) = (column / Stride, column % Stride / (double)Stride);
                var k = (r * knotColumns) + c;
                var (a, b, d, e) = (knots[k], knots[k + 1], knots[k + knotColumns], knots[k + knotColumns + 1]);
                x[row, column] = (float)((((1 - u) * a.X) + (u * b.X)) * (1 - v) + ((((1 - u) * d.X) + (u * e.X)) * v));
                y[row, column] = (float)((((1 - u) * a.Y) + (u * b.Y)) * (1 - v) + ((((1 - u) * d.Y) + (u * e.Y)) * v));
            }
        }
    }
}
