using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Targets;

/// <summary>A chessboard with a marker in each white square, as OpenCV's <c>CharucoBoard</c> lays it out: top-left square black, ids
/// from 0 along the rows from the top left.</summary>
/// <param name="Columns">Squares across.</param>
/// <param name="Rows">Squares down; odd, so that older and newer detectors agree on the pattern.</param>
/// <param name="SquareMm">Side of a square, mm.</param>
/// <param name="MarkerMm">Side of a marker with its black border, mm.</param>
/// <param name="Markers">The markers' family.</param>
/// <param name="BlankMargin">How many squares round the edge are drawn; those further in are left white. Null draws all.</param>
public sealed record CharucoLayout(int Columns, int Rows, double SquareMm, double MarkerMm, MarkerFamily Markers, int? BlankMargin)
{
    /// <summary>The sheet: 13 × 9 squares of 20 mm with a white window of 180 × 100 mm (columns 2 to 10, rows 2 to 6 from zero).</summary>
    public static CharucoLayout Sheet { get; } = new(13, 9, 20, 15, MarkerFamily.Sheet, 2);

    /// <summary>The card: 8 × 5 squares of 10 mm.</summary>
    public static CharucoLayout Card { get; } = new(8, 5, 10, 7.5, MarkerFamily.Card, null);

    /// <summary>Width of the board, mm.</summary>
    public double WidthMm => Columns * SquareMm;

    /// <summary>Height of the board, mm.</summary>
    public double HeightMm => Rows * SquareMm;

    /// <summary>True when a square lies in the white window.</summary>
    public bool IsBlank(int column, int row) => BlankMargin is { } margin
        && column >= margin && row >= margin && column < Columns - margin && row < Rows - margin;

    /// <summary>The black of the board, to be filled by the odd rule.</summary>
    /// <param name="topLeft">Where the board's top-left corner lies.</param>
    public IReadOnlyList<Contour> BlackAreas(PagePoint topLeft)
    {
        var areas = new List<Contour>();
        var id = 0;
        for (var row = 0; row < Rows; row++)
        {
            for (var column = 0; column < Columns; column++)
            {
                var corner = topLeft.Moved(column * SquareMm, row * SquareMm);
                var isBlack = (row + column) % 2 == 0;
                if (!IsBlank(column, row))
                {
                    areas.AddRange(isBlack ? [Contour.Rectangle(corner.XMm, corner.YMm, SquareMm, SquareMm)] : Marker(id, corner));
                }

                id += isBlack ? 0 : 1;
            }
        }

        return areas;
    }

    private IReadOnlyList<Contour> Marker(int id, PagePoint squareCorner)
    {
        var border = (SquareMm - MarkerMm) / 2;
        return CellBorders.Trace(Markers.BlackCells(id), squareCorner.Moved(border, border), MarkerMm / (Markers.BitsAcross + 2));
    }
}
