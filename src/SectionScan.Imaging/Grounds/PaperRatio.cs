using OpenCvSharp;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Grounds;

/// <summary>The sheet's window seen straight down, each cell as its light over the bare lit paper's: a face is a plateau, since
/// it is lit like the paper; a shadow keeps the paper's tint.</summary>
internal sealed class PaperRatio
{
    /// <summary>Side of a cell, mm.</summary>
    public const double StepMm = 0.2;

    private PaperRatio(PlaneView view, GroundModel paper, float[] light, float[] redGreen, float[] blueGreen)
    {
        (View, Paper, Light, RedGreen, BlueGreen) = (view, paper, light, redGreen, blueGreen);
    }

    /// <summary>The bare, lit paper.</summary>
    public GroundModel Paper { get; }

    /// <summary>The view it was made from.</summary>
    public PlaneView View { get; }

    /// <summary>Natural logarithm of the luminance ratio; 0 is lit paper.</summary>
    public float[] Light { get; }

    /// <summary>ln(red ratio / green ratio); 0 is paper-coloured.</summary>
    public float[] RedGreen { get; }

    /// <summary>ln(blue ratio / green ratio); 0 is paper-coloured.</summary>
    public float[] BlueGreen { get; }

    /// <summary>Makes the view of the blank window.</summary>
    public static PaperRatio Of(Mat colour, Camera camera, ScaleTarget target, double printRatioX, double printRatioY)
    {
        var window = target.BlankWindow!;
        var (stepX, stepY) = (target.SquareMm * printRatioX, target.SquareMm * printRatioY);
        var topLeft = new TargetPoint(window.FirstColumn * stepX, window.FirstRow * stepY);
        var view = PlaneView.Of(
            colour, camera, topLeft, (window.LastColumn + 1 - window.FirstColumn) * stepX, (window.LastRow + 1 - window.FirstRow) * stepY, StepMm);
        var samples = WhiteSquareSamples(colour, camera, target, stepX, stepY);
        var trusted = samples.Count;
        for (var row = 2; row < view.Rows; row += 10)
        {
            for (var column = 2; column < view.Columns; column += 10)
            {
                AddSample(samples, view, column, row);
            }
        }

        var model = GroundModel.Fit(samples, trusted, target.WidthMm);
        return Divide(view, model);
    }

    private static PaperRatio Divide(PlaneView view, GroundModel model)
    {
        var (light, redGreen, blueGreen) = (new float[view.Red.Length], new float[view.Red.Length], new float[view.Red.Length]);
        Parallel.For(0, view.Rows, row =>
        {
            // Along a row the surface is a cubic in the column.
            var (red, green, blue) = (model.AlongRow(view, row, 0), model.AlongRow(view, row, 1), model.AlongRow(view, row, 2));
            for (var column = 0; column < view.Columns; column++)
            {
                var i = (row * view.Columns) + column;
                var r = view.Red[i] - red.At(column);
                var g = view.Green[i] - green.At(column);
                var b = view.Blue[i] - blue.At(column);

                // Luminance weights of ITU-R BT.709, as sRGB uses them, on logarithms: a geometric mean finds as well as the true one.
                light[i] = (0.2126f * r) + (0.7152f * g) + (0.0722f * b);
                redGreen[i] = r - g;
                blueGreen[i] = b - g;
            }
        });
        return new(view, model, light, redGreen, blueGreen);
    }

    private static List<(TargetPoint Place, double Red, double Green, double Blue)> WhiteSquareSamples(
        Mat colour, Camera camera, ScaleTarget target, double stepX, double stepY)
    {
        var samples = new List<(TargetPoint, double, double, double)>();
        foreach (var (_, column, row) in target.Markers)
        {
            // Round the marker, midway between it and the square's border.
            for (var k = 0; k < 4; k++)
            {
                var share = 0.2 + (0.2 * k);
                var rim = (target.SquareMm - target.MarkerMm) / 4 / target.SquareMm;
                foreach (var (u, v) in new[] { (share, rim), (share, 1 - rim), (rim, share), (1 - rim, share) })
                {
                    AddPixels(samples, colour, camera, new((column + u) * stepX, (row + v) * stepY));
                }
            }
        }

        return samples;
    }

    /// <summary>The mean of three by three pixels.</summary>
    private static void AddPixels(List<(TargetPoint, double, double, double)> samples, Mat colour, Camera camera, TargetPoint place)
    {
        var pixel = camera.Project(place, 0);
        var (x, y) = ((int)Math.Round(pixel.X), (int)Math.Round(pixel.Y));
        if (x < 1 || y < 1 || x >= colour.Width - 1 || y >= colour.Height - 1)
        {
            return;
        }

        var pixels = colour.GetUnsafeGenericIndexer<Vec3b>();
        double red = 0, green = 0, blue = 0;
        for (var dy = -1; dy <= 1; dy++)
        {
            for (var dx = -1; dx <= 1; dx++)
            {
                var p = pixels[y + dy, x + dx];
                red += LinearLight.LogOfStored[p.Item2] / 9;
                green += LinearLight.LogOfStored[p.Item1] / 9;
                blue += LinearLight.LogOfStored[p.Item0] / 9;
            }
        }

        samples.Add((place, red, green, blue));
    }

    private static void AddSample(List<(TargetPoint, double, double, double)> samples, PlaneView view, int column, int row)
    {
        var i = (row * view.Columns) + column;
        if (!float.IsNaN(view.Red[i]))
        {
            samples.Add((view.PlaceOf(column, row), view.Red[i], view.Green[i], view.Blue[i]));
        }
    }
}
