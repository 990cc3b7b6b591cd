using System.Globalization;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Targets;

/// <summary>The page of the station tags. Each is cut out with 1.5 mm of white round the tag; the number and an arrow stand beneath, on
/// the side away from the roof.</summary>
internal static class StationTagsPage
{
    private const double TagMm = 10;
    private const double WhiteMm = 1.5;
    private const double NumberStripMm = 3.5;
    private const int Across = 7;
    private const double PitchXMm = 24;
    private const double PitchYMm = 30;
    private const double TopMm = 34;
    private const double BarMm = 150;
    private const double TextHeightMm = 2.8;

    private static readonly Pen CutPen = new(Colour.Grey(110), 0.1);

    public static Page Build(double widthMm, double heightMm)
    {
        var tags = MarkerFamily.StationTags;
        TargetPage.CheckHolds(widthMm, heightMm, 200, 260);
        var page = new PageBuilder(widthMm, heightMm, $"Station tags 0 to {tags.Count - 1}");
        var cutWidth = TagMm + (2 * WhiteMm);
        var left = ((widthMm - ((Across - 1) * PitchXMm) - cutWidth) / 2) + 6;
        for (var id = 0; id < tags.Count; id++)
        {
            var corner = new PagePoint(left + (id % Across * PitchXMm), TopMm + (id / Across * PitchYMm));
            Tag(page, tags, id, corner);
        }

        CheckBar.Across(page, new(left, TopMm + BarMm + 4), BarMm);
        CheckBar.Up(page, new(left - 14, TopMm + BarMm), BarMm);

        page.Layer = "text";
        page.Text(new(left, TopMm - 8), "Station tags", 4, Colour.Black, isBold: true);
        var y = TopMm + BarMm + 18;
        string[] steps =
        [
            PrintCheck.Print + " The tags only give the station and which way is up, so a small error of print does no harm; the bars show a gross one.",
            "Cut along the thin lines. The white round a tag must stay.",
            "Lay tag n beside the slice of station n, flat on the sheet, its arrow toward the roof of the port. Number the stations with the flow.",
        ];
        for (var i = 0; i < steps.Length; i++)
        {
            page.Text(new(left, y), $"{i + 1}", TextHeightMm, Colour.Black, isBold: true);
            y = page.Paragraph(new(left + 7, y), steps[i], TextHeightMm, 150, Colour.Black) + (StrokeFont.LineSpacing * 0.8);
        }

        return page.Build();
    }

    private static void Tag(PageBuilder page, MarkerFamily tags, int id, PagePoint cutCorner)
    {
        page.Layer = "cut";
        var cutWidth = TagMm + (2 * WhiteMm);
        page.Rectangle(cutCorner.XMm, cutCorner.YMm, cutWidth, cutWidth + NumberStripMm, null, CutPen);
        page.Layer = "tag";
        page.Path(
            CellBorders.Trace(tags.BlackCells(id), cutCorner.Moved(WhiteMm, WhiteMm), TagMm / (tags.BitsAcross + 2)),
            Colour.Black,
            null);
        page.Layer = "text";
        page.Text(
            cutCorner.Moved(cutWidth / 2, cutWidth + 2.4),
            string.Create(CultureInfo.InvariantCulture, $"↑ {id}"),
            2.4,
            Colour.Black,
            TextAnchor.Middle,
            isBold: true);
    }
}
