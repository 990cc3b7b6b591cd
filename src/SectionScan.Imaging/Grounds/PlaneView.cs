using OpenCvSharp;
using SectionScan.Imaging.Photos;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Grounds;

/// <summary>A straight-down view of a rectangle of the target's plane, as logarithms of linear light: for finding things, not for
/// measuring.</summary>
internal sealed class PlaneView
{
    private PlaneView(TargetPoint corner, double stepMm, int columns, int rows)
    {
        (Corner, StepMm, Columns, Rows) = (corner, stepMm, columns, rows);
        (Red, Green, Blue) = (new float[rows * columns], new float[rows * columns], new float[rows * columns]);
    }

    /// <summary>The target place of the middle of cell (0, 0).</summary>
    public TargetPoint Corner { get; }

    /// <summary>Side of a cell, mm.</summary>
    public double StepMm { get; }

    /// <summary>Cells across.</summary>
    public int Columns { get; }

    /// <summary>Cells down.</summary>
    public int Rows { get; }

    /// <summary>ln(linear red), row by row; NaN outside the photo.</summary>
    public float[] Red { get; }

    /// <summary>ln(linear green).</summary>
    public float[] Green { get; }

    /// <summary>ln(linear blue).</summary>
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
        var plane = new PlaneView(new(topLeft.XMm + (stepMm / 2), topLeft.YMm + (stepMm / 2)), stepMm, columns, rows);
        using var mapX = new Mat(rows, columns, MatType.CV_32FC1);
        using var mapY = new Mat(rows, columns, MatType.CV_32FC1);
        plane.FillMaps(mapX, mapY, camera);
        using var view = new Mat();
        Cv2.Remap(colour, view, mapX, mapY, InterpolationFlags.Linear, BorderTypes.Constant, new Scalar(0, 0, 0));
        plane.Fill(view, mapX, mapY, colour.Width - 1, colour.Height - 1);
        return plane;
    }

    /// <summary>The target place of the middle of a cell, fractions allowed.</summary>
    public TargetPoint PlaceOf(double column, double row) => new(Corner.XMm + (column * StepMm), Corner.YMm + (row * StepMm));

    /// <summary>The cell (column, row) that holds a target place; outside the view for places outside it.</summary>
    public Point CellOf(TargetPoint place) => new((int)Math.Round((place.XMm - Corner.XMm) / StepMm), (int)Math.Round((place.YMm - Corner.YMm) / StepMm));

    private void Fill(Mat view, Mat mapX, Mat mapY, int lastX, int lastY)
    {
        var pixels = view.GetUnsafeGenericIndexer<Vec3b>();
        var (x, y) = (mapX.GetUnsafeGenericIndexer<float>(), mapY.GetUnsafeGenericIndexer<float>());
        var table = LinearLight.LogOfStored;
        Parallel.For(0, Rows, row =>
        {
            for (var column = 0; column < Columns; column++)
            {
                var i = (row * Columns) + column;
                var (px, py) = (x[row, column], y[row, column]);
                if (px < 0 || py < 0 || px > lastX || py > lastY)
                {
                    (Red[i], Green[i], Blue[i]) = (float.NaN, float.NaN, float.NaN);
                    continue;
                }

                var pixel = pixels[row, column];
                (Red[i], Green[i], Blue[i]) = (table[pixel.Item2], table[pixel.Item1], table[pixel.Item0]);
            }
        });
    }

    private void FillMaps(Mat mapX, Mat mapY, Camera camera)
    {
        // Every eighth place exactly, the others between them: the mapping is smooth to far below a pixel.
        const int Stride = 8;
        var (x, y) = (mapX.GetUnsafeGenericIndexer<float>(), mapY.GetUnsafeGenericIndexer<float>());
        var knotColumns = ((Columns - 1) / Stride) + 2;
        var knotRows = ((Rows - 1) / Stride) + 2;
        var knots = new PixelPoint[knotRows * knotColumns];
        for (var r = 0; r < knotRows; r++)
        {
            for (var c = 0; c < knotColumns; c++)
            {
                knots[(r * knotColumns) + c] = camera.Project(PlaceOf(c * Stride, r * Stride), 0);
            }
        }

        Parallel.For(0, Rows, row =>
        {
            var (r, v) = (row / Stride, row % Stride / (double)Stride);
            for (var c = 0; c < knotColumns - 1; c++)
            {
                var k = (r * knotColumns) + c;
                var (a, b, d, e) = (knots[k], knots[k + 1], knots[k + knotColumns], knots[k + knotColumns + 1]);
                var (leftX, rightX) = (a.X + (v * (d.X - a.X)), b.X + (v * (e.X - b.X)));
                var (leftY, rightY) = (a.Y + (v * (d.Y - a.Y)), b.Y + (v * (e.Y - b.Y)));
                var last = Math.Min(Stride, Columns - (c * Stride));
                for (var u = 0; u < last; u++)
                {
                    x[row, (c * Stride) + u] = (float)(leftX + (u * (rightX - leftX) / Stride));
                    y[row, (c * Stride) + u] = (float)(leftY + (u * (rightY - leftY) / Stride));
                }
            }
        });
    }
}
