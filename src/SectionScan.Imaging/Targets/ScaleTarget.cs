using OpenCvSharp.Aruco;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Targets;

/// <summary>The geometry of a printed ChArUco target at its nominal size.</summary>
internal sealed record ScaleTarget
{
    private ScaleTarget(string kind, int columns, int rows, double squareMm, double markerMm, PredefinedDictionaryType dictionary, Window? window)
    {
        (Kind, Columns, Rows, SquareMm, MarkerMm, Dictionary, BlankWindow) = (kind, columns, rows, squareMm, markerMm, dictionary, window);
        Saddles = [.. AllSaddles()];
        Markers = [.. AllMarkers()];
    }

    /// <summary>The sheet for slices: 13 × 9 squares of 20 mm with a blank window of 180 × 100 mm.</summary>
    public static ScaleTarget Sheet { get; } = new("sheet", 13, 9, 20, 15, PredefinedDictionaryType.Dict5X5_100, new(2, 2, 10, 6));

    /// <summary>The card for sawn castings: 8 × 5 squares of 10 mm.</summary>
    public static ScaleTarget Card { get; } = new("card", 8, 5, 10, 7.5, PredefinedDictionaryType.Dict4X4_50, null);

    /// <summary>"sheet" or "card".</summary>
    public string Kind { get; }

    /// <summary>Squares across.</summary>
    public int Columns { get; }

    /// <summary>Squares down.</summary>
    public int Rows { get; }

    /// <summary>Side of a square, mm.</summary>
    public double SquareMm { get; }

    /// <summary>Side of a marker, mm.</summary>
    public double MarkerMm { get; }

    /// <summary>The markers' dictionary.</summary>
    public PredefinedDictionaryType Dictionary { get; }

    /// <summary>The squares left blank, or null.</summary>
    public Window? BlankWindow { get; }

    /// <summary>The true saddle points: inner corners where two black and two white squares meet, mm, nominal. The window's own
    /// corners miss a square and are none.</summary>
    public IReadOnlyList<TargetPoint> Saddles { get; }

    /// <summary>The markers that are printed: id and square (column, row).</summary>
    public IReadOnlyList<(int Id, int Column, int Row)> Markers { get; }

    /// <summary>Width of the whole board, mm.</summary>
    public double WidthMm => Columns * SquareMm;

    /// <summary>Height of the whole board, mm.</summary>
    public double HeightMm => Rows * SquareMm;

    /// <summary>True when the square is printed black: top-left square black, then like a chessboard, none in the window.</summary>
    public bool IsBlack(int column, int row) => (column + row) % 2 == 0 && !IsBlank(column, row);

    private bool IsBlank(int column, int row) => BlankWindow is { } w
        && column >= w.FirstColumn && column <= w.LastColumn && row >= w.FirstRow && row <= w.LastRow;

    private IEnumerable<TargetPoint> AllSaddles()
    {
        for (var row = 1; row < Rows; row++)
        {
            for (var column = 1; column < Columns; column++)
            {
                if (!IsBlank(column - 1, row - 1) && !IsBlank(column, row - 1) && !IsBlank(column - 1, row) && !IsBlank(column, row))
                {
                    yield return new(column * SquareMm, row * SquareMm);
                }
            }
        }
    }

    private IEnumerable<(int Id, int Column, int Row)> AllMarkers()
    {
        var id = 0;
        for (var row = 0; row < Rows; row++)
        {
            for (var column = 0; column < Columns; column++)
            {
                if ((column + row) % 2 == 1)
                {
                    if (!IsBlank(column, row))
                    {
                        yield return (id, column, row);
                    }

                    id++;
                }
            }
        }
    }

    /// <summary>Squares left blank, zero-based and inclusive.</summary>
    internal sealed record Window(int FirstColumn, int FirstRow, int LastColumn, int LastRow);
}
