using System.Globalization;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Walls;
using SectionScan.Metrology.Comparison;
using SectionScan.Porting.Cutting;

namespace SectionScan.Drawings.Cutting;

/// <summary>The pages of a cut plan for the wall of the bench: one of each station, and a first one with the order of work.</summary>
public static class CutPlanPage
{
    private const double MarginMm = 12;
    private const double FigureTopMm = 29;
    private const double BelowFigureMm = 163;
    private const int MostWalls = 5;
    private static readonly string[] SectorHead = ["side", "mean now", "most now", "mean at finish", "most at finish", "metal now", "metal in all", "to leave"];
    private static readonly string[] WallHead = ["wall at the target to", "side", "wall", "U (k = 2)", "limit", "chance under limit"];
    private static readonly double[] SectorColumns = [34, 54, 74, 96, 118, 142, 164, 186];
    private static readonly double[] WallColumns = [52, 74, 98, 126, 152, 186];

    /// <summary>Draws the page of one station, upright.</summary>
    /// <param name="cut">The cut.</param>
    /// <param name="caption">What to write.</param>
    /// <param name="paper">The paper.</param>
    public static Page Station(StationCut cut, CutPlanCaption caption, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(cut);
        ArgumentNullException.ThrowIfNull(caption);
        ArgumentNullException.ThrowIfNull(paper);
        var page = new PageBuilder(paper.WidthMm, paper.HeightMm, caption.Title);
        var (width, figureHeight) = (paper.WidthMm - (2 * MarginMm), paper.HeightMm - BelowFigureMm);
        Head(page, caption.Title, $"{caption.PresentName} to {caption.TargetName}");
        var uncertainty = cut.DepthStandardUncertaintyMm > 0
            ? $"; U of a depth {MeasureText.Length(new(cut.DepthExpandedUncertaintyMm, 0), caption.Unit)} (k = 2)"
            : "; uncertainty of the outlines not known";
        page.Text(
            new(MarginMm, 24), $"Depths: now / at finish, greatest of each side. Left for finishing {MeasureText.Length(new(cut.AllowanceMm, 0), caption.Unit)}{uncertainty}",
            Ink.SmallHeightMm, Ink.Text);

        var scale = CutFigure.ScaleFor(cut, width, figureHeight);
        CutFigure.Draw(page, cut, new(paper.WidthMm / 2, FigureTopMm + (figureHeight / 2)), scale, width / 2, figureHeight / 2, caption.Unit);
        page.Layer = "text";
        var y = Legend(page, FigureTopMm + figureHeight + 4, scale, cut);
        y = PageTable.Draw(page, new(MarginMm, y), Stretched(SectorColumns, width), SectorRows(cut, caption.Unit));
        if (cut.Walls.Count > 0)
        {
            y = PageTable.Draw(page, new(MarginMm, y + 2), Stretched(WallColumns, width), WallRows(cut, caption.Unit));
        }

        y += 5;
        foreach (var line in Notes(cut, caption))
        {
            y = page.Paragraph(new(MarginMm, y), line, Ink.SmallHeightMm, width, Ink.Text) + 0.6;
        }

        return page.Build();
    }

    /// <summary>The figure of one station by itself, small enough for two beside each other on a sheet.</summary>
    /// <param name="cut">The cut.</param>
    /// <param name="title">The head line.</param>
    /// <param name="unit">What depths are labelled in.</param>
    public static Page Small(StationCut cut, string title, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(cut);
        const double SideMm = 85;
        const double HeadMm = 8;
        var page = new PageBuilder(SideMm, SideMm + HeadMm, title) { Layer = "text" };
        var scale = CutFigure.ScaleFor(cut, SideMm, SideMm);
        page.Text(new(2, 5), title, Ink.TextHeightMm, Ink.Text, isBold: true);
        page.Text(new(SideMm - 2, 5), string.Create(CultureInfo.InvariantCulture, $"drawn {scale:0.#}:1"), Ink.SmallHeightMm, Ink.Faint, TextAnchor.End);
        CutFigure.Draw(page, cut, new(SideMm / 2, HeadMm + (SideMm / 2)), scale, SideMm / 2, SideMm / 2, unit);
        return page.Build();
    }

    /// <summary>Draws the first page: what there is to do, station by station, and in which order.</summary>
    /// <param name="title">The head line.</param>
    /// <param name="subtitle">What the plan was made from.</param>
    /// <param name="table">Rows of seven cells, the head first.</param>
    /// <param name="steps">The order of work in plain words.</param>
    /// <param name="cautions">The usual cautions.</param>
    /// <param name="paper">The paper.</param>
    public static Page Summary(
        string title, string subtitle, IReadOnlyList<IReadOnlyList<string>> table, IReadOnlyList<string> steps, IReadOnlyList<string> cautions, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(steps);
        ArgumentNullException.ThrowIfNull(cautions);
        ArgumentNullException.ThrowIfNull(paper);
        var page = new PageBuilder(paper.WidthMm, paper.HeightMm, title);
        var width = paper.WidthMm - (2 * MarginMm);
        Head(page, title, subtitle);
        var y = PageTable.Draw(page, new(MarginMm, 26), Stretched([30, 56, 82, 108, 134, 160, 186], width), table) + 6;
        page.Text(new(MarginMm, y), "Order of work (common practice, no source)", Ink.TextHeightMm, Ink.Text, isBold: true);
        y = Numbered(page, y + 5.5, steps, width) + 3;
        page.Text(new(MarginMm, y), "Cautions", Ink.TextHeightMm, Ink.Text, isBold: true);
        Numbered(page, y + 5.5, cautions, width);
        return page.Build();
    }

    private static double Numbered(PageBuilder page, double y, IReadOnlyList<string> lines, double width)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            page.Text(new(MarginMm, y), string.Create(CultureInfo.InvariantCulture, $"{i + 1}"), Ink.SmallHeightMm, Ink.Text, isBold: true);
            y = page.Paragraph(new(MarginMm + 6, y), lines[i], Ink.SmallHeightMm, width - 6, Ink.Text) + 0.8;
        }

        return y;
    }

    private static void Head(PageBuilder page, string title, string subtitle)
    {
        page.Layer = "text";
        page.Text(new(MarginMm, 13.5), title, 4, Ink.Text, isBold: true);
        page.Text(new(MarginMm, 19), subtitle, Ink.TextHeightMm, Ink.Text);
    }

    private static double[] Stretched(double[] columns, double widthMm) => Array.ConvertAll(columns, edge => edge * widthMm / columns[^1]);

    private static double Legend(PageBuilder page, double y, double scale, StationCut cut)
    {
        const double SampleMm = 9;
        var half = (page.WidthMm - (2 * MarginMm)) / 3;
        var entries = new List<(string Text, Action<PagePoint> Sample)>
        {
            ("metal to remove now", at => Swatch(at, CutFigure.NowFill)),
            ("left for finishing", at => Swatch(at, CutFigure.FinishFill)),
            ("beyond the target already", at => Swatch(at, CutFigure.BeyondFill)),
            ("target", at => page.Line(at, at.Moved(SampleMm, 0), CutFigure.TargetPen)),
            ("present", at => page.Line(at, at.Moved(SampleMm, 0), CutFigure.PresentPen)),
            ("remove nothing", at => page.Line(at, at.Moved(SampleMm, 0), CutFigure.LeavePen)),
        };
        if (cut.Walls.Count > 0)
        {
            entries.Add(("remove nothing: thin wall", at => page.Line(at, at.Moved(SampleMm, 0), CutFigure.ThinPen)));
            entries.Add(("keep-out", at => page.Line(at, at.Moved(SampleMm, 0), KeepOutFigure.BorderPen)));
            entries.Add(("its limit", at => page.Line(at, at.Moved(SampleMm, 0), KeepOutFigure.LimitPen)));
        }

        page.Layer = "legend";
        for (var i = 0; i < entries.Count; i++)
        {
            var at = new PagePoint(MarginMm + (i % 3 * half), y + (i / 3 * 4.4));
            entries[i].Sample(at.Moved(0, -Ink.SmallHeightMm / 2));
            page.Text(at.Moved(SampleMm + 2, 0), entries[i].Text, Ink.SmallHeightMm, Ink.Text);
        }

        page.Text(
            new(page.WidthMm - MarginMm, y - 5), string.Create(CultureInfo.InvariantCulture, $"drawn {scale:0.#}:1, seen with the flow"),
            Ink.SmallHeightMm, Ink.Faint, TextAnchor.End);
        return y + (((entries.Count + 2) / 3) * 4.4) - 0.5;

        void Swatch(PagePoint at, Colour fill) => page.Rectangle(at.XMm, at.YMm - 1.2, SampleMm, 2.4, fill, Ink.Thin);
    }

    private static List<IReadOnlyList<string>> SectorRows(StationCut cut, LengthUnit unit)
    {
        var rows = new List<IReadOnlyList<string>>
        {
            SectorHead,
        };
        rows.AddRange(cut.Sectors.Select(sector => (IReadOnlyList<string>)
        [
            RegionWords.Of(sector.Region), Length(sector.MeanNowMm), Length(sector.MostNowMm), Length(sector.MeanAtFinishMm), Length(sector.MostAtFinishMm),
            MeasureText.Area(new(sector.NowMm2, 0), unit), MeasureText.Area(new(sector.AtFinishMm2, 0), unit),
            string.Create(CultureInfo.InvariantCulture, $"{100 * sector.ShareToLeave:0} %"),
        ]));
        rows.Add(
        [
            "all round", string.Empty, Length(cut.Places.Max(place => place.NowMm)), string.Empty, Length(cut.Places.Max(place => place.AtFinishMm)),
            MeasureText.Area(new(cut.NowMm2, 0), unit), MeasureText.Area(new(cut.AtFinishMm2, 0), unit),
            string.Create(CultureInfo.InvariantCulture, $"{100.0 * cut.Places.Count(place => place.Mark is CutMark.Leave or CutMark.Beyond or CutMark.ThinWall) / cut.Places.Count:0} %"),
        ]);
        return rows;

        string Length(double lengthMm) => MeasureText.Length(new(lengthMm, 0), unit);
    }

    private static List<IReadOnlyList<string>> WallRows(StationCut cut, LengthUnit unit)
    {
        var rows = new List<IReadOnlyList<string>> { WallHead };
        rows.AddRange(cut.Walls.Take(MostWalls).Select(wall => (IReadOnlyList<string>)
        [
            wall.KeepOut.Name, RegionWords.Of(wall.Region), Length(wall.WallMm.Value), Length(wall.WallMm.ExpandedUncertainty), Length(wall.KeepOut.LimitMm), WallWords.Chance(wall),
        ]));
        return rows;

        string Length(double lengthMm) => MeasureText.Length(new(lengthMm, 0), unit);
    }

    private static IEnumerable<string> Notes(StationCut cut, CutPlanCaption caption)
    {
        yield return $"Halves: {MeasureText.Area(new(cut.Halves.LeftMm2, 0), caption.Unit)} on the left, {MeasureText.Area(new(cut.Halves.RightMm2, 0), caption.Unit)} on the right. "
            + (cut.Halves.IsTargetSymmetric
                ? "The target's halves are alike: work both in turn and hold one template to both."
                : $"The target's halves differ by up to {MeasureText.Length(new(cut.Halves.TargetAsymmetryMm, 0), caption.Unit)}: mind which side the template is for.");
        foreach (var step in caption.Steps)
        {
            yield return step;
        }

        if (cut.Walls.Count == 0)
        {
            yield return "No keep-outs were given: this plan knows nothing of the walls. Measure them before cutting.";
        }

        yield return CutCautions.InShort;
    }
}
