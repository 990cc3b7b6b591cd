using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Summaries;

/// <summary>One row of drawings on a sheet.</summary>
/// <param name="Pages">The drawings from left to right.</param>
/// <param name="Scales">How large each is set, 1 for true size.</param>
/// <param name="HeightMm">The height of the tallest as set, mm.</param>
internal sealed record PaperRow(IReadOnlyList<Page> Pages, IReadOnlyList<double> Scales, double HeightMm);

/// <summary>How drawings stand side by side on a sheet.</summary>
/// <param name="StepMm">From one column to the next, mm.</param>
/// <param name="Rows">The rows from top to bottom.</param>
internal sealed record PaperRows(double StepMm, IReadOnlyList<PaperRow> Rows)
{
    /// <summary>Below this the drawings' lettering (2 to 2.5 mm) becomes hard to read.</summary>
    public const double LeastScale = 0.8;

    private const double BetweenMm = 4;
    private const int MostColumns = 4;

    /// <summary>Arranges drawings.</summary>
    /// <param name="drawings">The drawings, one or more.</param>
    /// <param name="widthMm">The width of the sheet's text.</param>
    /// <param name="mostHeightMm">The most that a row may be high.</param>
    public static PaperRows Of(IReadOnlyList<Page> drawings, double widthMm, double mostHeightMm)
    {
        var widest = drawings.Max(each => each.WidthMm);
        var columns = Enumerable.Range(1, Math.Min(MostColumns, drawings.Count)).Last(n => n == 1 || Cell(n, widthMm) / widest >= LeastScale);
        var cell = Cell(columns, widthMm);
        var rows = drawings.Chunk(columns).Select(row =>
        {
            var scales = row.Select(each => Math.Min(1, Math.Min(cell / widest, mostHeightMm / each.HeightMm))).ToArray();
            return new PaperRow(row, scales, row.Zip(scales, (each, scale) => each.HeightMm * scale).Max());
        });
        return new(cell + BetweenMm, [.. rows]);
    }

    private static double Cell(int columns, double widthMm) => (widthMm - ((columns - 1) * BetweenMm)) / columns;
}
