using System.Globalization;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Targets;
using SectionScan.Metrology.Frames;
using SectionScan.Porting.Cutting;

namespace SectionScan.Drawings.Templates;

/// <summary>Templates nested on pages at actual size, with check bars; one that is larger than a page is spread over several.</summary>
public static class TemplatePages
{
    /// <summary>The length of the check bars, mm.</summary>
    public const double BarMm = 100;

    private const double LeftMm = 21;
    private const double TopMm = 17;
    private const double MarginMm = 8;
    private const double BottomMm = 36;
    private const double CaptionMm = 9;
    private const double GapMm = 5;
    private const double OverlapMm = 12;
    private const double CrossMm = 3;
    private const double TitleMm = 3;
    private const double TextMm = 2.1;

    private static readonly Pen MarkPen = new(Ink.Line, 0.18) { IsRound = true };
    private static readonly Pen JointPen = new(Ink.Faint, 0.13) { DashesMm = [2, 1.5] };

    /// <summary>Draws pages.</summary>
    /// <param name="pieces">The templates, one or more.</param>
    /// <param name="title">The title of the pages.</param>
    /// <param name="paper">The paper; it is used on its side, as the sheet target is, so that the same print ratios hold.</param>
    /// <param name="lineWidthMm">The width of the lines to cut along.</param>
    /// <param name="correction">The printer's measured ratios.</param>
    public static IReadOnlyList<Page> Build(
        IReadOnlyList<TemplatePiece> pieces, string title, PaperSize paper, double lineWidthMm, PrintCorrection correction)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(paper);
        ArgumentOutOfRangeException.ThrowIfZero(pieces.Count, nameof(pieces));
        var (width, height) = correction.TrueSize(paper.Landscape);
        var (usableWidth, usableHeight) = (width - LeftMm - MarginMm, height - TopMm - BottomMm);
        var boxes = pieces.Select(BoxOf).ToList();
        var isWhole = boxes.ConvertAll(box => box.WidthMm <= usableWidth && box.HeightMm <= usableHeight);
        var whole = Enumerable.Range(0, pieces.Count).Where(i => isWhole[i]).ToList();
        var places = TemplateNesting.Nest([.. whole.Select(i => boxes[i])], usableWidth, usableHeight, GapMm);
        var sheets = new List<Action<PageBuilder>>();
        for (var number = 0; number < (places.Count == 0 ? 0 : places.Max(place => place.Page) + 1); number++)
        {
            var page = number;
            sheets.Add(sheet =>
            {
                for (var k = 0; k < whole.Count; k++)
                {
                    if (places[k].Page == page)
                    {
                        Whole(sheet, pieces[whole[k]], new(LeftMm + places[k].XMm, TopMm + places[k].YMm), lineWidthMm);
                    }
                }
            });
        }

        foreach (var i in Enumerable.Range(0, pieces.Count).Where(i => !isWhole[i]))
        {
            sheets.AddRange(Tiles(pieces[i], usableWidth, usableHeight - CaptionMm, lineWidthMm));
        }

        return [.. sheets.Select((draw, number) => correction.Apply(Sheet(draw, number)))];

        Page Sheet(Action<PageBuilder> draw, int number)
        {
            var pageTitle = $"{title}, page {number + 1} of {sheets.Count}";
            var page = new PageBuilder(width, height, pageTitle);
            Frame(page, correction, lineWidthMm);
            page.Layer = "note";
            page.Text(new(LeftMm, MarginMm + TitleMm), pageTitle, TitleMm, Ink.Text, isBold: true);
            draw(page);
            return page.Build();
        }
    }

    private static (double WidthMm, double HeightMm) BoxOf(TemplatePiece piece) => (
        new[] { piece.RightMm - piece.LeftMm, StrokeFont.WidthMm(piece.Title, TextMm), StrokeFont.WidthMm(piece.Note, TextMm) }.Max() + 1,
        piece.TopMm - piece.BottomMm + CaptionMm);

    private static void Whole(PageBuilder page, TemplatePiece piece, PagePoint corner, double lineWidthMm)
    {
        var origin = corner.Moved(-piece.LeftMm + 0.5, piece.TopMm);
        DrawPiece(page, piece, origin, lineWidthMm, contour => [contour]);
        Caption(page, piece, corner.Moved(0.5, piece.TopMm - piece.BottomMm), string.Empty);
    }

    private static void Caption(PageBuilder page, TemplatePiece piece, PagePoint below, string more)
    {
        page.Layer = "note";
        page.Text(below.Moved(0, 3.6), piece.Title + more, TextMm, Ink.Text, isBold: true);
        page.Text(below.Moved(0, 7.2), piece.Note, TextMm, Ink.Text);
    }

    /// <summary>A page for each part of a piece that is larger than a page; neighbours share a strip with two crosses.</summary>
    private static IEnumerable<Action<PageBuilder>> Tiles(TemplatePiece piece, double widthMm, double heightMm, double lineWidthMm)
    {
        var (pieceWidth, pieceHeight) = (piece.RightMm - piece.LeftMm + 2, piece.TopMm - piece.BottomMm + 2);
        var (columns, rows) = (Parts(pieceWidth, widthMm), Parts(pieceHeight, heightMm));
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var (x, y) = (column * (widthMm - OverlapMm), row * (heightMm - OverlapMm));
                var words = string.Create(
                    CultureInfo.InvariantCulture, $"; part {(row * columns) + column + 1} of {columns * rows} (row {row + 1}, column {column + 1})");
                yield return page => Tile(page, x, y, words);
            }
        }

        void Tile(PageBuilder page, double x, double y, string words)
        {
            // The window's corner lies at (x, y) right of and below the piece's own corner.
            var (right, bottom) = (LeftMm + Math.Min(widthMm, pieceWidth - x), TopMm + Math.Min(heightMm, pieceHeight - y));
            var origin = new PagePoint(LeftMm - x - piece.LeftMm + 1, TopMm - y + piece.TopMm + 1);
            DrawPiece(page, piece, origin, lineWidthMm, contour => LineClip.Within(contour, LeftMm, TopMm, right, bottom));
            page.Layer = "joint";
            page.Rectangle(LeftMm, TopMm, right - LeftMm, bottom - TopMm, null, JointPen);
            foreach (var cross in Crosses((widthMm, heightMm), (pieceWidth, pieceHeight)).Select(c => c.Moved(LeftMm - x, TopMm - y))
                .Where(c => c.XMm > LeftMm && c.XMm < right && c.YMm > TopMm && c.YMm < bottom))
            {
                page.Lines([(cross.Moved(-CrossMm, 0), cross.Moved(CrossMm, 0)), (cross.Moved(0, -CrossMm), cross.Moved(0, CrossMm))], Ink.Thin);
            }

            Caption(page, piece, new(LeftMm, bottom), words + ": join the parts so that the crosses meet");
        }
    }

    private static int Parts(double lengthMm, double windowMm) =>
        lengthMm <= windowMm ? 1 : (int)Math.Ceiling((lengthMm - OverlapMm) / (windowMm - OverlapMm));

    /// <summary>Crosses in the strips that neighbours share, from the piece's own corner.</summary>
    private static IEnumerable<PagePoint> Crosses((double WidthMm, double HeightMm) window, (double WidthMm, double HeightMm) piece)
    {
        var (stepX, stepY) = (window.WidthMm - OverlapMm, window.HeightMm - OverlapMm);
        var (columns, rows) = (Parts(piece.WidthMm, window.WidthMm), Parts(piece.HeightMm, window.HeightMm));
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                // The last part in a row or column is smaller than the window.
                var (x, y) = (column * stepX, row * stepY);
                var (width, height) = (Math.Min(window.WidthMm, piece.WidthMm - x), Math.Min(window.HeightMm, piece.HeightMm - y));
                foreach (var share in new[] { 0.25, 0.75 })
                {
                    if (column > 0)
                    {
                        yield return new(x + (OverlapMm / 2), y + (share * height));
                    }

                    if (row > 0)
                    {
                        yield return new(x + (share * width), y + (OverlapMm / 2));
                    }
                }
            }
        }
    }

    private static void DrawPiece(
        PageBuilder page, TemplatePiece piece, PagePoint origin, double lineWidthMm, Func<Contour, IEnumerable<Contour>> clip)
    {
        var cut = new Pen(Colour.Black, lineWidthMm);
        foreach (var group in piece.Lines.GroupBy(line => line.Layer))
        {
            page.Layer = group.Key;
            foreach (var line in group)
            {
                Add(new(Placed(line.Points), line.IsClosed), TemplateLayers.IsCut(line.Layer) ? cut : Ink.Centre);
            }
        }

        page.Layer = TemplateLayers.Mark;
        foreach (var text in piece.Texts)
        {
            var strokes = TemplatePiece.Strokes(text).SelectMany(stroke => clip(new(Placed(stroke), IsClosed: false))).ToList();
            if (strokes.Count > 0)
            {
                page.Path(strokes, null, MarkPen);
            }
        }

        void Add(Contour contour, Pen pen)
        {
            var runs = clip(contour).ToList();
            if (runs.Count > 0)
            {
                page.Path(runs, null, pen);
            }
        }

        PagePoint[] Placed(IReadOnlyList<SectionPoint> points) => [.. points.Select(p => origin.Moved(p.XMm, -p.YMm))];
    }

    private static void Frame(PageBuilder page, PrintCorrection correction, double lineWidthMm)
    {
        var bottom = page.HeightMm - BottomMm;
        CheckBar.Up(page, new(LeftMm - 9, bottom - 4), BarMm);
        CheckBar.Across(page, new(LeftMm, bottom + 6), BarMm);
        page.Layer = "note";
        var isTrue = correction == PrintCorrection.None;
        var (x, y) = isTrue ? ("X", "Y") : (Times(correction.Across, "X"), Times(correction.Up, "Y"));
        var y0 = bottom + 12.5;
        string[] notes =
        [
            $"{PrintCheck.Print} {(isTrue ? string.Empty : $"Corrected for a printer that makes {Ratio(correction.Across)} across and {Ratio(correction.Up)} up. ")}"
                + $"Both bars must read 100.0 mm; if not, print again with --print-ratio {x},{y}, where X = read across ÷ 100 and Y = read up ÷ 100.",
            string.Create(CultureInfo.InvariantCulture, $"The lines to cut are {lineWidthMm:0.##} mm wide and lie in the waste: cut until the line is just gone. The printed face looks upstream, the arrow to the roof. A handle stands square on its plug, the tongue glued or soldered into the slot."),
            CutCautions.InShort,
        ];
        foreach (var note in notes)
        {
            y0 = page.Paragraph(new(LeftMm, y0), note, TextMm, page.WidthMm - LeftMm - MarginMm, Ink.Text) + 0.4;
        }

        static string Ratio(double ratio) => ratio.ToString("0.0000", CultureInfo.InvariantCulture);
        static string Times(double ratio, string letter) => $"{Ratio(ratio)}·{letter}";
    }
}
