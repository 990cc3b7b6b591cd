using OpenCvSharp;
using OpenCvSharp.Aruco;
using SectionScan.Drawings.Targets;

namespace SectionScan.Drawings.Tests.Targets;

public sealed class CharucoLayoutTests
{
    // Pixels per mm at which every cell is a whole number of pixels: 15 mm / 7 cells × 2.8 = 6, 7.5 mm / 6 cells × 4 = 5.
    private const double SheetScale = 2.8;
    private const double CardScale = 4;

    [Fact]
    public void The_whole_board_of_the_sheet_is_OpenCVs_pixel_by_pixel()
    {
        using var expected = OpenCvBoard(13, 9, 0.020f, 0.015f, PredefinedDictionaryType.Dict5X5_100, new Size(728, 504));

        var drawn = Rasterised(CharucoLayout.Sheet with { BlankMargin = null }, SheetScale);

        Assert.Equal(0, Differences(expected, drawn, (_, _) => false));
    }

    [Fact]
    public void The_card_is_OpenCVs_board_pixel_by_pixel()
    {
        using var expected = OpenCvBoard(8, 5, 0.010f, 0.0075f, PredefinedDictionaryType.Dict4X4_50, new Size(320, 200));

        var drawn = Rasterised(CharucoLayout.Card, CardScale);

        Assert.Equal(0, Differences(expected, drawn, (_, _) => false));
    }

    [Fact]
    public void The_sheet_is_that_board_with_columns_2_to_10_of_rows_2_to_6_left_white()
    {
        using var expected = OpenCvBoard(13, 9, 0.020f, 0.015f, PredefinedDictionaryType.Dict5X5_100, new Size(728, 504));

        var drawn = Rasterised(CharucoLayout.Sheet, SheetScale);

        // A square is 56 px.
        Assert.Equal(0, Differences(expected, drawn, (row, column) => column / 56 is >= 2 and <= 10 && row / 56 is >= 2 and <= 6));
    }

    private static Mat OpenCvBoard(int columns, int rows, float square, float marker, PredefinedDictionaryType type, Size size)
    {
        using var dictionary = CvAruco.GetPredefinedDictionary(type);
        using var board = new CharucoBoard(columns, rows, square, marker, dictionary);
        var image = new Mat();
        board.GenerateImage(size, image, 0, 1);
        return image;
    }

    private static int Differences(Mat expected, bool[,] black, Func<int, int, bool> isBlank)
    {
        var (rows, columns) = (black.GetLength(0), black.GetLength(1));
        Assert.Equal((expected.Rows, expected.Cols), (rows, columns));
        var differences = 0;
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var isBlack = expected.At<byte>(row, column) < 128 && !isBlank(row, column);
                differences += isBlack == black[row, column] ? 0 : 1;
            }
        }

        return differences;
    }

    // Odd rule at pixel centres: a centre is black when an odd number of upright edges lies to its left.
    private static bool[,] Rasterised(CharucoLayout layout, double scale)
    {
        var black = new bool[(int)Math.Round(layout.HeightMm * scale), (int)Math.Round(layout.WidthMm * scale)];
        foreach (var contour in layout.BlackAreas(new(0, 0)))
        {
            for (var i = 0; i < contour.Points.Count; i++)
            {
                var (from, to) = (contour.Points[i], contour.Points[(i + 1) % contour.Points.Count]);
                var (low, high) = (Math.Min(from.YMm, to.YMm) * scale, Math.Max(from.YMm, to.YMm) * scale);
                for (var row = (int)Math.Round(low); row < (int)Math.Round(high); row++)
                {
                    for (var column = (int)Math.Round(from.XMm * scale); column < black.GetLength(1); column++)
                    {
                        black[row, column] ^= true;
                    }
                }
            }
        }

        return black;
    }
}
