using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;

namespace SectionScan.Drawings.Cutting;

/// <summary>A plain table on a page: a head line, rows, a thin line under the head; the first column to the left, the others to the right.</summary>
internal static class PageTable
{
    private const double RowMm = 4.6;

    /// <summary>Draws a table and gives the y below it.</summary>
    /// <param name="page">The page.</param>
    /// <param name="corner">Its top-left corner.</param>
    /// <param name="rightEdgesMm">Where each column ends, from the corner; the first column begins at the corner.</param>
    /// <param name="rows">Rows of as many cells as there are columns, the head first.</param>
    public static double Draw(PageBuilder page, PagePoint corner, IReadOnlyList<double> rightEdgesMm, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        var y = corner.YMm + 3;
        for (var r = 0; r < rows.Count; r++)
        {
            for (var c = 0; c < rows[r].Count; c++)
            {
                var (x, anchor) = c == 0 ? (corner.XMm, TextAnchor.Start) : (corner.XMm + rightEdgesMm[c], TextAnchor.End);
                page.Text(new(x, y), rows[r][c], Ink.SmallHeightMm, Ink.Text, anchor, isBold: r == 0);
            }

            if (r == 0)
            {
                page.Line(new(corner.XMm, y + 1.4), new(corner.XMm + rightEdgesMm[^1], y + 1.4), Ink.Thin);
                y += 0.8;
            }

            y += RowMm;
        }

        return y - 1;
    }
}
