using OpenCvSharp;
using OpenCvSharp.Aruco;

namespace SectionScan.Testing.Rendering;

/// <summary>The ink of a printed target: black or white at a place, from OpenCV's own dictionaries.</summary>
internal sealed class TargetPattern
{
    private readonly double ratioX;
    private readonly double ratioY;
    private readonly double squareMm;
    private readonly double markerMm;
    private readonly int columns;
    private readonly int rows;
    private readonly int cells;
    private readonly bool[]?[] markers;

    public TargetPattern(SceneTarget target, double ratioX, double ratioY)
    {
        (this.ratioX, this.ratioY) = (ratioX, ratioY);
        (columns, rows, squareMm, markerMm, cells) = target == SceneTarget.Sheet ? (13, 9, 20, 15, 7) : (8, 5, 10, 7.5, 6);
        IsSheet = target == SceneTarget.Sheet;
        using var dictionary = CvAruco.GetPredefinedDictionary(
            IsSheet ? PredefinedDictionaryType.Dict5X5_100 : PredefinedDictionaryType.Dict4X4_50);
        markers = new bool[columns * rows][];
        var id = 0;
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                if ((row + column) % 2 == 1)
                {
                    markers[(row * columns) + column] = Bits(dictionary, id++, cells);
                }
            }
        }

        // An A4 page with the sheet in its middle; a card cut out with 5 mm around.
        var (marginX, marginY) = IsSheet ? ((297.0 - 260) / 2, (210.0 - 180) / 2) : (5.0, 5.0);
        PageLeft = -marginX;
        PageTop = -marginY;
        PageRight = (columns * squareMm * ratioX) + marginX;
        PageBottom = (rows * squareMm * ratioY) + marginY;
    }

    public bool IsSheet { get; }

    public double PageLeft { get; }

    public double PageTop { get; }

    public double PageRight { get; }

    public double PageBottom { get; }

    /// <summary>The 8 × 8 cells of a station tag, row by row, true for white.</summary>
    public static bool[] TagBits(int id)
    {
        using var dictionary = CvAruco.GetPredefinedDictionary(PredefinedDictionaryType.DictAprilTag_36h11);
        return Bits(dictionary, id, 8);
    }

    public bool IsOnPage(double x, double y) => x >= PageLeft && x < PageRight && y >= PageTop && y < PageBottom;

    public bool IsInk(double x, double y)
    {
        var nx = x / (ratioX * squareMm);
        var ny = y / (ratioY * squareMm);
        if (nx < 0 || ny < 0 || nx >= columns || ny >= rows)
        {
            return false;
        }

        var (column, row) = ((int)nx, (int)ny);
        if (IsSheet && column is >= 2 and <= 10 && row is >= 2 and <= 6)
        {
            return false;
        }

        if (markers[(row * columns) + column] is not { } bits)
        {
            return true;
        }

        var margin = (1 - (markerMm / squareMm)) / 2;
        var cellX = (nx - column - margin) * squareMm / markerMm * cells;
        var cellY = (ny - row - margin) * squareMm / markerMm * cells;
        return cellX >= 0 && cellY >= 0 && cellX < cells && cellY < cells && !bits[((int)cellY * cells) + (int)cellX];
    }

    private static bool[] Bits(Dictionary dictionary, int id, int cells)
    {
        using var image = new Mat();

        // Held by name: an output that only an implicit conversion made may be finalised while OpenCV still writes to it.
        using var output = OutputArray.Create(image);
        dictionary.GenerateImageMarker(id, cells, output, 1);
        output.Fix();
        var bits = new bool[cells * cells];
        for (var k = 0; k < bits.Length; k++)
        {
            bits[k] = image.At<byte>(k / cells, k % cells) > 127;
        }

        return bits;
    }
}
