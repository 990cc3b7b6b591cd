using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Targets;

/// <summary>The border of an area of square cells.</summary>
internal static class CellBorders
{
    private static readonly (int Row, int Column)[] Directions = [(0, 1), (1, 0), (0, -1), (-1, 0)];

    /// <summary>Traces the border between true and false cells as closed contours, to be filled by the odd rule.</summary>
    /// <param name="cells">The cells by row and column; beyond the edges all is false.</param>
    /// <param name="topLeft">Where the corner of the first cell lies.</param>
    /// <param name="cellMm">The side of a cell, mm.</param>
    /// <remarks>One area instead of a square for each cell: neighbouring squares show hairlines where a reader smooths their
    /// edges.</remarks>
    public static IReadOnlyList<Contour> Trace(bool[,] cells, PagePoint topLeft, double cellMm)
    {
        var contours = new List<Contour>();
        var seen = new HashSet<(int Row, int Column, int Direction)>();
        for (var row = 0; row < cells.GetLength(0); row++)
        {
            for (var column = 0; column < cells.GetLength(1); column++)
            {
                // Every border has a stretch that runs right along the top of a true cell.
                if (cells[row, column] && !IsSet(cells, row - 1, column) && !seen.Contains((row, column, 0)))
                {
                    var corners = Follow(cells, row, column, seen);
                    contours.Add(new(
                        [.. corners.Select(c => topLeft.Moved(c.Column * cellMm, c.Row * cellMm))],
                        IsClosed: true));
                }
            }
        }

        return contours;
    }

    // Walks along grid lines with the true cells on the right hand, and notes each corner where the direction changes.
    private static List<(int Row, int Column)> Follow(bool[,] cells, int startRow, int startColumn, HashSet<(int, int, int)> seen)
    {
        var corners = new List<(int Row, int Column)>();
        var (row, column, direction) = (startRow, startColumn, 0);
        while (seen.Add((row, column, direction)))
        {
            row += Directions[direction].Row;
            column += Directions[direction].Column;
            var turned = Turned(cells, row, column, direction);
            if (turned != direction)
            {
                corners.Add((row, column));
            }

            direction = turned;
        }

        return corners;
    }

    // Left if the cell ahead on the left is true, else straight on if the one on the right is, else right.
    private static int Turned(bool[,] cells, int row, int column, int direction)
    {
        var (leftRow, leftColumn, rightRow, rightColumn) = direction switch
        {
            0 => (row - 1, column, row, column),
            1 => (row, column, row, column - 1),
            2 => (row, column - 1, row - 1, column - 1),
            _ => (row - 1, column - 1, row - 1, column),
        };
        if (!IsSet(cells, rightRow, rightColumn))
        {
            return (direction + 1) % 4;
        }

        return IsSet(cells, leftRow, leftColumn) ? (direction + 3) % 4 : direction;
    }

    private static bool IsSet(bool[,] cells, int row, int column)
        => row >= 0 && column >= 0 && row < cells.GetLength(0) && column < cells.GetLength(1) && cells[row, column];
}
