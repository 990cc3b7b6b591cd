using System.Globalization;
using SectionScan.Drawings.Cutting;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Walls;

namespace SectionScan.Drawings.Walls;

/// <summary>The page of the walls at one station: the outlines, the keep-outs with their limits, the thinnest wall to each with its place,
/// and a table of all.</summary>
public static class WallsPage
{
    private const double MarginMm = 12;
    private const double FigureTopMm = 24;
    private const double RowMm = 4.6;
    private const double LegendMm = 15;
    private const double BelowTableMm = 46;
    private const double LabelRoomMm = 14;
    private const int MostRows = 24;

    private static readonly double[] Scales = [0.5, 1, 1.5, 2, 2.5, 3, 4, 5];
    private static readonly double[] Columns = [46, 62, 88, 106, 128, 144, 186];
    private static readonly Pen FinishedPen = new(new(0, 92, 158), 0.4) { IsRound = true, DashesMm = [4, 0.9, 0.9, 0.9] };
    private static readonly Pen WallPen = new(Ink.Line, 0.5);
    private static readonly Pen CautionPen = new(new(190, 78, 0), 1);

    /// <summary>Draws the page, upright.</summary>
    /// <param name="outlines">The outlines in the present section's frame, present first.</param>
    /// <param name="walls">The wall of each outline to each keep-out.</param>
    /// <param name="caption">What to write.</param>
    /// <param name="paper">The paper.</param>
    public static Page Build(
        IReadOnlyList<(WallStage Stage, Outline Outline)> outlines, IReadOnlyList<RemainingWall> walls, WallsCaption caption, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(outlines);
        ArgumentNullException.ThrowIfNull(walls);
        ArgumentNullException.ThrowIfNull(caption);
        ArgumentNullException.ThrowIfNull(paper);
        var page = new PageBuilder(paper.WidthMm, paper.HeightMm, caption.Title) { Layer = "text" };
        page.Text(new(MarginMm, 13.5), caption.Title, 4, Ink.Text, isBold: true);
        page.Text(new(MarginMm, 19), caption.Subtitle, Ink.TextHeightMm, Ink.Text);

        // The likeliest to come under their limits first: those are the ones that must not fall off the page.
        var keepOuts = walls.GroupBy(wall => wall.KeepOut).OrderByDescending(group => group.Max(wall => wall.ChanceUnderLimit)).ToList();
        var rows = keepOuts.SelectMany((group, i) => group.OrderBy(wall => wall.Stage).Select(wall => (Letter: Letter(i), Wall: wall))).ToList();
        var shown = rows.Take(MostRows).ToList();
        var width = paper.WidthMm - (2 * MarginMm);
        var height = paper.HeightMm - FigureTopMm - LegendMm - ((shown.Count + 1) * RowMm) - BelowTableMm;
        var middle = new PagePoint(paper.WidthMm / 2, FigureTopMm + (height / 2));
        var scale = Figure(page, outlines, [.. keepOuts.Select((group, i) => (Letter(i), group.ToList()))], caption.Unit, (middle, width / 2, height / 2));

        page.Layer = "text";
        var y = Legend(page, FigureTopMm + height + 5, scale, outlines);
        y = PageTable.Draw(page, new(MarginMm, y), Array.ConvertAll(Columns, edge => edge * width / Columns[^1]), Rows(shown, caption.Unit)) + 4;
        if (rows.Count > shown.Count)
        {
            y = page.Paragraph(
                new(MarginMm, y), $"{rows.Count - shown.Count} more, less likely to come under their limits, stand in the table that was written beside this page.",
                Ink.SmallHeightMm, width, Ink.Text) + 0.6;
        }

        foreach (var note in caption.Notes)
        {
            y = page.Paragraph(new(MarginMm, y), note, Ink.SmallHeightMm, width, Ink.Text) + 0.6;
        }

        return page.Build();
    }

    private static double Figure(
        PageBuilder page,
        IReadOnlyList<(WallStage Stage, Outline Outline)> outlines,
        List<(string Letter, List<RemainingWall> Walls)> keepOuts,
        LengthUnit unit,
        (PagePoint Middle, double HalfWidthMm, double HalfHeightMm) room)
    {
        var box = Box(outlines, keepOuts.SelectMany(each => each.Walls));
        var scale = Scales.Last(s => s == Scales[0]
            || ((box.Width * s) + (2 * LabelRoomMm) <= 2 * room.HalfWidthMm && (box.Height * s) + (2 * LabelRoomMm) <= 2 * room.HalfHeightMm));
        var view = SectionView.Centred(room.Middle, box, scale);
        KeepOutFigure.Draw(page, keepOuts.Select(each => each.Walls[0].KeepOut), view, room.Middle, room.HalfWidthMm, room.HalfHeightMm);
        foreach (var (stage, outline) in outlines)
        {
            page.Layer = stage.ToString().ToLowerInvariant();
            page.Path([view.ToContour(outline)], null, PenOf(stage));
        }

        foreach (var (letter, walls) in keepOuts)
        {
            page.Layer = "wall";
            foreach (var wall in walls.OrderByDescending(wall => wall.Stage))
            {
                page.Line(view.ToPage(wall.Least.AtPort), view.ToPage(wall.Least.AtKeepOut), wall.NeedsCaution ? CautionPen : WallPen);
            }

            Label(page, view, letter, walls.MaxBy(wall => wall.Stage)!, unit, room);
        }

        return scale;
    }

    /// <summary>Letter and thinnest wall, beyond the wall as seen from the port.</summary>
    private static void Label(
        PageBuilder page, SectionView view, string letter, RemainingWall wall, LengthUnit unit, (PagePoint Middle, double HalfWidthMm, double HalfHeightMm) room)
    {
        const double BeyondMm = 2.5;
        var (from, to) = (view.ToPage(wall.Least.AtPort), view.ToPage(wall.Least.AtKeepOut));
        var (x, y) = (to.XMm - from.XMm, to.YMm - from.YMm);
        var length = double.Hypot(x, y);
        (x, y) = length < 0.01 ? (1, 0) : wall.WallMm.Value < 0 ? (-x / length, -y / length) : (x / length, y / length);
        var words = $"{letter}  {MeasureText.Length(new(wall.WallMm.Value, 0), unit)}";
        var half = StrokeFont.WidthMm(words, Ink.SmallHeightMm) / 2;
        var foot = wall.WallMm.Value < 0 ? from : to;
        var at = new PagePoint(
            Math.Clamp(foot.XMm + (x * (BeyondMm + half)), room.Middle.XMm - room.HalfWidthMm + half, room.Middle.XMm + room.HalfWidthMm - half),
            Math.Clamp(foot.YMm + (y * (BeyondMm + 1)) + (Ink.SmallHeightMm / 2), room.Middle.YMm - room.HalfHeightMm + 3, room.Middle.YMm + room.HalfHeightMm - 1));
        page.Layer = "label";
        page.Rectangle(at.XMm - half - 0.6, at.YMm - Ink.SmallHeightMm - 0.6, (2 * half) + 1.2, Ink.SmallHeightMm + 1.2, Colour.White, null);
        page.Text(at, words, Ink.SmallHeightMm, Ink.Text, TextAnchor.Middle, isBold: true);
    }

    // The outlines, the far ends of the walls, and round passages with their limits as far as they do not make all else small.
    private static OutlineBox Box(IReadOnlyList<(WallStage Stage, Outline Outline)> outlines, IEnumerable<RemainingWall> walls)
    {
        const double MostBeyond = 0.5;
        var box = OutlineBox.Of([.. outlines.Select(each => each.Outline)]);
        var most = MostBeyond * Math.Max(box.Width, box.Height);
        var (left, bottom, right, top) = (box.Left, box.Bottom, box.Right, box.Top);
        foreach (var wall in walls)
        {
            var (centre, reach) = wall.KeepOut.Shape is KeepOutCircle circle
                ? (circle.Centre, circle.RadiusMm + wall.KeepOut.LimitMm)
                : (wall.Least.AtKeepOut, wall.KeepOut.LimitMm);
            (left, right) = (Math.Min(left, centre.XMm - reach), Math.Max(right, centre.XMm + reach));
            (bottom, top) = (Math.Min(bottom, centre.YMm - reach), Math.Max(top, centre.YMm + reach));
        }

        return new(Math.Max(left, box.Left - most), Math.Max(bottom, box.Bottom - most), Math.Min(right, box.Right + most), Math.Min(top, box.Top + most));
    }

    private static double Legend(PageBuilder page, double y, double scale, IReadOnlyList<(WallStage Stage, Outline Outline)> outlines)
    {
        const double SampleMm = 9;
        var column = (page.WidthMm - (2 * MarginMm)) / 4;
        List<(string Text, Pen Pen)> entries =
        [
            .. outlines.Select(each => (each.Stage.ToString().ToLowerInvariant(), PenOf(each.Stage))),
            ("keep-out", KeepOutFigure.BorderPen),
            ("its limit", KeepOutFigure.LimitPen),
            ("thinnest wall", WallPen),
            ("the same: caution", CautionPen),
        ];
        page.Layer = "legend";
        for (var i = 0; i < entries.Count; i++)
        {
            var at = new PagePoint(MarginMm + (i % 4 * column), y + (i / 4 * 4.4));
            page.Line(at.Moved(0, -Ink.SmallHeightMm / 2), at.Moved(SampleMm, -Ink.SmallHeightMm / 2), entries[i].Pen);
            page.Text(at.Moved(SampleMm + 2, 0), entries[i].Text, Ink.SmallHeightMm, Ink.Text);
        }

        page.Text(
            new(page.WidthMm - MarginMm, y + 4.4), string.Create(CultureInfo.InvariantCulture, $"drawn {scale:0.#}:1, seen with the flow"),
            Ink.SmallHeightMm, Ink.Faint, TextAnchor.End);
        return y + 7.5;
    }

    private static List<IReadOnlyList<string>> Rows(List<(string Letter, RemainingWall Wall)> walls, LengthUnit unit)
    {
        var rows = new List<IReadOnlyList<string>> { (string[])["wall to", "outline", "side", "wall", "U (k = 2)", "limit", "chance under limit"] };
        rows.AddRange(walls.Select(each => (IReadOnlyList<string>)
        [
            $"{each.Letter}  {each.Wall.KeepOut.Name}", each.Wall.Stage.ToString().ToLowerInvariant(), RegionWords.Of(each.Wall.Region), Length(each.Wall.WallMm.Value),
            Length(each.Wall.WallMm.ExpandedUncertainty), Length(each.Wall.KeepOut.LimitMm), WallWords.Chance(each.Wall),
        ]));
        return rows;

        string Length(double lengthMm) => MeasureText.Length(new Estimate(lengthMm, 0), unit);
    }

    private static Pen PenOf(WallStage stage) => stage switch
    {
        WallStage.Present => CutFigure.PresentPen,
        WallStage.Target => CutFigure.TargetPen,
        _ => FinishedPen,
    };

    // A, B, … Z, AA, AB, …
    private static string Letter(int number) => (number < 26 ? string.Empty : Letter((number / 26) - 1)) + (char)('A' + (number % 26));
}
