using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Targets;

/// <summary>The page of the sheet. From the top: a strip with name and check bar, the board, two lines on how to print and check. The
/// other check bar stands left of the board. 5 mm and more stay white round the board and free of ink along the paper's edge.</summary>
internal static class SheetPage
{
    private const double AcrossMm = 200;
    private const double UpMm = 150;
    private const double TextHeightMm = 2;

    // Strip 3 mm, white 5 mm, board 180 mm, white 5 mm, two lines 7 mm.
    private const double NeededHeightMm = 200;
    private const double BoardBelowTopMm = 8;

    // Room for the bar on Letter, whose sides are only 9.7 mm wide when the board is centred: 5.2 mm edge, 2 mm bar, 5.8 mm white.
    private const double LeastLeftMm = 13;
    private const double BarLeftOfBoardMm = 6.8;
    private const double LeastRightMm = 6.4;

    public static Page Build(double widthMm, double heightMm)
    {
        var board = CharucoLayout.Sheet;
        TargetPage.CheckHolds(widthMm, heightMm, LeastLeftMm + board.WidthMm + LeastRightMm, NeededHeightMm + 10);
        var page = new PageBuilder(widthMm, heightMm, "Scale sheet: 20 mm squares with a window for slices");
        var top = (heightMm - NeededHeightMm) / 2;
        var corner = new PagePoint(Math.Max((widthMm - board.WidthMm) / 2, LeastLeftMm), top + BoardBelowTopMm);
        page.Layer = "board";
        page.Path(board.BlackAreas(corner), Colour.Black, null);

        CheckBar.Across(page, new(corner.XMm + board.WidthMm - AcrossMm, top + 1.2), AcrossMm);
        CheckBar.Up(page, new(corner.XMm - BarLeftOfBoardMm, corner.YMm + ((board.HeightMm + UpMm) / 2)), UpMm);

        page.Layer = "text";
        page.Text(new(corner.XMm, top + 2.1), "Scale sheet, 20 mm squares", TextHeightMm, Colour.Black, isBold: true);
        page.Text(new(corner.XMm + 47, top + 2.1), "↑ roof", TextHeightMm, Colour.Black);
        var lines = corner.Moved(0, board.HeightMm + 7.4);
        page.Text(lines, PrintCheck.Print + " " + PrintCheck.MeasureBothBars, TextHeightMm, Colour.Black);
        page.Text(lines.Moved(0, 3.5), PrintCheck.GiveRatio(AcrossMm, UpMm), TextHeightMm, Colour.Black);
        return page.Build();
    }
}
