using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Targets;

/// <summary>The page of the card: the card with its cut line and its own check bars, and below what to do with it.</summary>
internal static class CardPage
{
    private const double QuietMm = 6;
    private const double BarFromBoardMm = 6.8;
    private const double CutFromBoardMm = 10;
    private const double TopMm = 34;
    private const double TextHeightMm = 2.8;
    private const double TextWidthMm = 156;

    private static readonly Pen CutPen = new(Colour.Grey(110), 0.1);

    public static Page Build(double widthMm, double heightMm)
    {
        var board = CharucoLayout.Card;
        var cardWidth = CutFromBoardMm + board.WidthMm + QuietMm;
        var cardHeight = QuietMm + board.HeightMm + CutFromBoardMm;
        TargetPage.CheckHolds(widthMm, heightMm, 180, 200);
        var page = new PageBuilder(widthMm, heightMm, "Scale card: 10 mm squares");
        var left = (widthMm - TextWidthMm) / 2;
        var corner = new PagePoint(left + CutFromBoardMm, TopMm + QuietMm);

        page.Layer = "cut";
        page.Rectangle(left, TopMm, cardWidth, cardHeight, null, CutPen);
        page.Layer = "board";
        page.Path(board.BlackAreas(corner), Colour.Black, null);
        CheckBar.Across(page, corner.Moved(0, board.HeightMm + BarFromBoardMm), board.WidthMm);
        CheckBar.Up(page, corner.Moved(-BarFromBoardMm, board.HeightMm), board.HeightMm);

        page.Layer = "text";
        page.Text(corner.Moved(-5.3, board.HeightMm + 7.4), "↑ roof", 1.6, Colour.Black, TextAnchor.Middle);
        page.Text(new(left, TopMm - 6), "Scale card, 10 mm squares", 4, Colour.Black, isBold: true);
        var y = TopMm + cardHeight + 16;
        string[] steps =
        [
            PrintCheck.Print,
            PrintCheck.MeasureBothBars,
            PrintCheck.GiveRatio(board.WidthMm, board.HeightMm),
            "Cut along the thin line.",
            "Lay the card flat on the sawn face beside the opening, its arrow toward the roof of the port. It must lie in the plane of the face: blow chips away, and hold a curled card down at the corners.",
        ];
        for (var i = 0; i < steps.Length; i++)
        {
            page.Text(new(left, y), $"{i + 1}", TextHeightMm, Colour.Black, isBold: true);
            y = page.Paragraph(new(left + 7, y), steps[i], TextHeightMm, TextWidthMm - 7, Colour.Black) + (StrokeFont.LineSpacing * 0.8);
        }

        return page.Build();
    }
}
