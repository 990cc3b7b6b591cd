using OpenCvSharp;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Checks;

/// <summary>How the paper and the ink of a target are exposed.</summary>
/// <param name="PaperLevel">Median stored luma of the paper, 0 to 255.</param>
/// <param name="InkLevel">Median stored luma of the ink, 0 to 255.</param>
/// <param name="ClippedShare">Share of the paper's places at which a colour channel is at the end of its scale, 0 to 1.</param>
/// <param name="CrushedShare">Share of the ink's places at which all channels are at the start of theirs, 0 to 1.</param>
/// <param name="Unevenness">Brightest over darkest paper in linear light (95th over 5th percentile of the white squares); at least 1.</param>
internal sealed record PaperLight(double PaperLevel, double InkLevel, double ClippedShare, double CrushedShare, double Unevenness)
{
    // Stored values this near to the ends count as cut off: JPEG moves them by a step or so.
    private const double FullLevel = 253.5;
    private const double EmptyLevel = 1.5;

    // Window places darker than this share of the white squares' usual light are no paper but slices and shadows.
    private const double PaperShare = 0.5;
    private const double WindowStepMm = 8;

    // Places within a black square, in squares.
    private static readonly double[] Inside = [0.3, 0.5, 0.7];

    /// <summary>Looks at the white squares, the blank window and the black squares.</summary>
    /// <param name="colour">H × W, CV_8UC3.</param>
    /// <param name="camera">The camera.</param>
    /// <param name="sighting">The target; a square none of whose corners is seen is taken for covered.</param>
    /// <param name="ratio">The print ratios.</param>
    public static PaperLight Of(Mat colour, Camera camera, TargetSighting sighting, (double X, double Y) ratio)
    {
        var target = sighting.Target;
        var seen = sighting.Points.Select(p => ((int)Math.Round(p.Target.XMm / target.SquareMm), (int)Math.Round(p.Target.YMm / target.SquareMm))).ToHashSet();
        bool IsSeen(int column, int row) => seen.Contains((column, row)) || seen.Contains((column + 1, row))
            || seen.Contains((column, row + 1)) || seen.Contains((column + 1, row + 1));
        var (stepX, stepY) = (target.SquareMm * ratio.X, target.SquareMm * ratio.Y);
        var whites = target.Markers.Where(m => IsSeen(m.Column, m.Row)).SelectMany(m => Rim(target, m.Column, m.Row))
            .Select(p => Look(colour, camera, new(p.X * stepX, p.Y * stepY))).OfType<Place>().ToList();
        var inks = Blacks(target, IsSeen).Select(p => Look(colour, camera, new(p.X * stepX, p.Y * stepY))).OfType<Place>().ToList();
        if (whites.Count == 0 || inks.Count == 0)
        {
            return new(0, 0, 0, 0, 1);
        }

        var lights = whites.Select(w => w.Light).Order().ToArray();
        var usual = Quantile(lights, 0.5);
        var paper = whites.Concat(Window(target, ratio).Select(p => Look(colour, camera, p)).OfType<Place>()
            .Where(w => w.Light > PaperShare * usual)).ToList();
        return new(
            Quantile([.. whites.Select(w => w.Luma).Order()], 0.5), Quantile([.. inks.Select(w => w.Luma).Order()], 0.5),
            paper.Count(w => w.Most >= FullLevel) / (double)paper.Count, inks.Count(w => w.Most <= EmptyLevel) / (double)inks.Count,
            Quantile(lights, 0.95) / Math.Max(1e-4, Quantile(lights, 0.05)));
    }

    /// <summary>Places of a white square between its marker and its border, in squares.</summary>
    private static IEnumerable<(double X, double Y)> Rim(ScaleTarget target, int column, int row)
    {
        var rim = (target.SquareMm - target.MarkerMm) / 4 / target.SquareMm;
        foreach (var along in new[] { 0.2, 0.4, 0.6, 0.8 })
        {
            yield return (column + along, row + rim);
            yield return (column + along, row + 1 - rim);
            yield return (column + rim, row + along);
            yield return (column + 1 - rim, row + along);
        }
    }

    private static IEnumerable<(double X, double Y)> Blacks(ScaleTarget target, Func<int, int, bool> isSeen) =>
        from row in Enumerable.Range(0, target.Rows)
        from column in Enumerable.Range(0, target.Columns)
        where target.IsBlack(column, row) && isSeen(column, row)
        from x in Inside
        from y in Inside
        select (column + x, row + y);

    private static IEnumerable<TargetPoint> Window(ScaleTarget target, (double X, double Y) ratio)
    {
        if (target.BlankWindow is not { } window)
        {
            yield break;
        }

        for (var y = (window.FirstRow * target.SquareMm) + 2; y < (window.LastRow + 1) * target.SquareMm; y += WindowStepMm)
        {
            for (var x = (window.FirstColumn * target.SquareMm) + 2; x < (window.LastColumn + 1) * target.SquareMm; x += WindowStepMm)
            {
                yield return new(x * ratio.X, y * ratio.Y);
            }
        }
    }

    private static Place? Look(Mat colour, Camera camera, TargetPoint at)
    {
        var pixel = camera.Project(at, 0);
        var (x, y) = ((int)Math.Round(pixel.X), (int)Math.Round(pixel.Y));
        if (x < 1 || y < 1 || x >= colour.Width - 1 || y >= colour.Height - 1)
        {
            return null;
        }

        var pixels = colour.GetUnsafeGenericIndexer<Vec3b>();
        double red = 0, green = 0, blue = 0, light = 0;
        for (var i = 0; i < 9; i++)
        {
            var p = pixels[y + (i / 3) - 1, x + (i % 3) - 1];
            (red, green, blue) = (red + (p.Item2 / 9.0), green + (p.Item1 / 9.0), blue + (p.Item0 / 9.0));

            // Luminance weights of ITU-R BT.709, as sRGB uses them.
            light += ((0.2126 * LinearLight.OfStored[p.Item2]) + (0.7152 * LinearLight.OfStored[p.Item1]) + (0.0722 * LinearLight.OfStored[p.Item0])) / 9;
        }

        // Luma weights of ITU-R BT.601, as JPEG uses them.
        return new((0.299 * red) + (0.587 * green) + (0.114 * blue), Math.Max(red, Math.Max(green, blue)), light);
    }

    private static double Quantile(double[] sorted, double share) => sorted[(int)Math.Round(share * (sorted.Length - 1))];

    private sealed record Place(double Luma, double Most, double Light);
}
