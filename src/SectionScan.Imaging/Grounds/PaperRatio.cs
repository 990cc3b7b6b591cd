using OpenCvSharp;
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

    // No ratio below this is told apart from black.
    private const float LeastLight = 1f / 4096;

    private PaperRatio(PlaneView view, float[] light, float[] redGreen, float[] blueGreen)
    {
        (View, Light, RedGreen, BlueGreen) = (view, light, redGreen, blueGreen);
    }

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
        var whites = PlaneView.Of(colour, camera, new(0, 0), target.WidthMm * printRatioX, target.HeightMm * printRatioY, 0.5);
        var samples = WhiteSquareSamples(whites, target, stepX, stepY);
        var trusted = samples.Count;
        for (var row = 2; row < view.Rows; row += 6)
        {
            for (var column = 2; column < view.Columns; column += 6)
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
            for (var column = 0; column < view.Columns; column++)
            {
                var i = (row * view.Columns) + column;
                var place = view.PlaceOf(column, row);
                var r = MathF.Log(MathF.Max(view.Red[i], LeastLight)) - (float)model.LogLight(place, 0);
                var g = MathF.Log(MathF.Max(view.Green[i], LeastLight)) - (float)model.LogLight(place, 1);
                var b = MathF.Log(MathF.Max(view.Blue[i], LeastLight)) - (float)model.LogLight(place, 2);

                // Luminance weights of ITU-R BT.709, as sRGB uses them.
                light[i] = MathF.Log((0.2126f * MathF.Exp(r)) + (0.7152f * MathF.Exp(g)) + (0.0722f * MathF.Exp(b)));
                redGreen[i] = r - g;
                blueGreen[i] = b - g;
            }
        });
        return new(view, light, redGreen, blueGreen);
    }

    private static List<(TargetPoint Place, double Red, double Green, double Blue)> WhiteSquareSamples(
        PlaneView whites, ScaleTarget target, double stepX, double stepY)
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
                    var place = new TargetPoint((column + u) * stepX, (row + v) * stepY);
                    var c = (int)Math.Round((place.XMm - whites.Corner.XMm) / whites.StepMm);
                    var r = (int)Math.Round((place.YMm - whites.Corner.YMm) / whites.StepMm);
                    AddSample(samples, whites, c, r);
                }
            }
        }

        return samples;
    }

    private static void AddSample(List<(TargetPoint, double, double, double)> samples, PlaneView view, int column, int row)
    {
        if (column < 0 || row < 0 || column >= view.Columns || row >= view.Rows)
        {
            return;
        }

        var i = (row * view.Columns) + column;
        if (view.Red[i] > LeastLight && view.Green[i] > LeastLight && view.Blue[i] > LeastLight)
        {
            samples.Add((view.PlaceOf(column, row), Math.Log(view.Red[i]), Math.Log(view.Green[i]), Math.Log(view.Blue[i])));
        }
    }
}
