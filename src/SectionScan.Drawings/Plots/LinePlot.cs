using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Drawings.Plots;

/// <summary>A plot of values along something, in vectors, to be read in black and white too.</summary>
public static class LinePlot
{
    private const double MarginMm = 4;
    private const double LeftMm = 20;
    private const double BottomMm = 14;
    private const double LegendSampleMm = 12;
    private const double LegendLineMm = 4.6;
    private const double MarkMm = 1.1;

    private static readonly Pen Grid = new(Colour.Grey(215), 0.13);
    private static readonly Pen Place = new(Colour.Grey(150), 0.13) { DashesMm = [0.5, 1] };
    private static readonly Pen Bar = new(Ink.Line, 0.18);
    private static readonly Colour BandFill = Colour.Grey(228);
    private static readonly Pen BandEdge = new(Colour.Grey(170), 0.13);

    /// <summary>The series' pens in order: full, dashed, dotted, dash and dot, and two more; each darker or lighter too.</summary>
    private static readonly Pen[] Pens =
    [
        new(Colour.Black, 0.45) { IsRound = true },
        new(new Colour(31, 78, 140), 0.4) { DashesMm = [3, 1.5] },
        new(new Colour(184, 92, 0), 0.4) { DashesMm = [0.8, 1.1] },
        new(Colour.Grey(90), 0.35) { DashesMm = [5, 1.2, 0.8, 1.2] },
        new(new Colour(120, 60, 140), 0.4) { DashesMm = [1.8, 0.8] },
        new(new Colour(0, 118, 104), 0.4) { DashesMm = [6, 0.8, 0.8, 0.8, 0.8, 0.8] },
    ];

    /// <summary>The pen of a series, for a drawing beside the plot.</summary>
    internal static Pen PenOf(int series) => Pens[series % Pens.Length];

    /// <summary>Draws the plot.</summary>
    /// <param name="frame">What stands round it.</param>
    /// <param name="series">One series or more, with at least one point among them.</param>
    public static Page Build(PlotFrame frame, IReadOnlyList<PlotSeries> series)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(series);
        var points = series.SelectMany(each => each.Line.Concat(each.Marks)).ToList();
        if (points.Count == 0)
        {
            throw new ArgumentException("A plot needs a point.", nameof(series));
        }

        var page = new PageBuilder(frame.WidthMm, frame.HeightMm, frame.Title);
        page.Layer = "text";
        page.Text(new(MarginMm, MarginMm + Ink.TitleHeightMm), frame.Title, Ink.TitleHeightMm, Ink.Text, isBold: true);
        var top = Legend(page, frame, series, MarginMm + Ink.TitleHeightMm + 4.5);
        var values = points.SelectMany(p => new[] { p.Y - p.ExpandedUncertainty, p.Y + p.ExpandedUncertainty })
            .Concat(frame.Bands.SelectMany(band => new[] { band.From, band.To })).Concat(frame.IsFromZero ? [0.0] : []).ToList();
        var area = new PlotArea(
            LeftMm, top, frame.WidthMm - MarginMm - 4, frame.HeightMm - BottomMm,
            PlotAxis.Of(points.Min(p => p.X), points.Max(p => p.X), isRounded: false), PlotAxis.Of(values.Min(), values.Max(), isRounded: true));
        Bands(page, frame, area);
        Axes(page, frame, area);
        for (var i = 0; i < series.Count; i++)
        {
            Series(page, series[i], area, i);
        }

        BandLabels(page, frame, area);
        return page.Build();
    }

    private static double Legend(PageBuilder page, PlotFrame frame, IReadOnlyList<PlotSeries> series, double y)
    {
        var x = MarginMm;
        for (var i = 0; i < series.Count; i++)
        {
            var needed = LegendSampleMm + 2 + StrokeFont.WidthMm(series[i].Name, Ink.TextHeightMm) + 6;
            if (x > MarginMm && x + needed > frame.WidthMm - MarginMm)
            {
                (x, y) = (MarginMm, y + LegendLineMm);
            }

            page.Layer = "legend";
            var middle = new PagePoint(x + (LegendSampleMm / 2), y - (Ink.TextHeightMm / 2));
            if (series[i].Line.Count > 0)
            {
                page.Line(middle.Moved(-LegendSampleMm / 2, 0), middle.Moved(LegendSampleMm / 2, 0), Pens[i % Pens.Length]);
            }

            if (series[i].Marks.Count > 0)
            {
                Mark(page, middle, i);
            }

            page.Text(new(x + LegendSampleMm + 2, y), series[i].Name, Ink.TextHeightMm, Ink.Text);
            x += needed;
        }

        return y + (frame.Places.Count > 0 ? 6 : 3);
    }

    private static void Bands(PageBuilder page, PlotFrame frame, PlotArea area)
    {
        foreach (var band in frame.Bands)
        {
            var (top, bottom) = (area.Y(band.To), area.Y(band.From));
            page.Layer = "band";
            page.Rectangle(area.Left, top, area.Right - area.Left, bottom - top, BandFill, BandEdge);
        }
    }

    /// <summary>The bands' names on paper of their own, over the courses, so that no line runs through them.</summary>
    private static void BandLabels(PageBuilder page, PlotFrame frame, PlotArea area)
    {
        foreach (var band in frame.Bands)
        {
            var (width, baseline) = (StrokeFont.WidthMm(band.Label, Ink.SmallHeightMm), area.Y(band.To) + Ink.SmallHeightMm + 1);
            page.Layer = "band";
            page.Rectangle(area.Left + 1, baseline - Ink.SmallHeightMm - 0.6, width + 2, Ink.SmallHeightMm + 1.4, Colour.White, null);
            page.Layer = "text";
            page.Text(new(area.Left + 2, baseline), band.Label, Ink.SmallHeightMm, Ink.Text);
        }
    }

    private static void Axes(PageBuilder page, PlotFrame frame, PlotArea area)
    {
        page.Layer = "grid";
        page.Lines(area.Up.Ticks().Select(tick => (new PagePoint(area.Left, area.Y(tick.Value)), new PagePoint(area.Right, area.Y(tick.Value)))), Grid);
        foreach (var (x, label) in frame.Places.Where(place => area.Holds(place.X)))
        {
            page.Layer = "place";
            page.Line(new(area.X(x), area.Top), new(area.X(x), area.Bottom), Place);
            page.Layer = "text";
            page.Text(new(area.X(x), area.Top - 1.2), label, Ink.SmallHeightMm, Ink.Faint, TextAnchor.Middle);
        }

        page.Layer = "axis";
        page.Rectangle(area.Left, area.Top, area.Right - area.Left, area.Bottom - area.Top, null, Ink.Thin);
        page.Layer = "text";
        foreach (var (value, label) in area.Up.Ticks())
        {
            page.Text(new(area.Left - 1.5, area.Y(value) + (Ink.SmallHeightMm / 2)), label, Ink.SmallHeightMm, Ink.Text, TextAnchor.End);
        }

        foreach (var (value, label) in area.Along.Ticks())
        {
            page.Line(new(area.X(value), area.Bottom), new(area.X(value), area.Bottom + 1), Ink.Thin);
            page.Text(new(area.X(value), area.Bottom + 4.2), label, Ink.SmallHeightMm, Ink.Text, TextAnchor.Middle);
        }

        page.Text(new((area.Left + area.Right) / 2, area.Bottom + 9.5), frame.XLabel, Ink.TextHeightMm, Ink.Text, TextAnchor.Middle);
        page.Text(
            new(MarginMm + Ink.TextHeightMm, (area.Top + area.Bottom) / 2), frame.YLabel, Ink.TextHeightMm, Ink.Text, TextAnchor.Middle, Angle.FromDegrees(90));
    }

    private static void Series(PageBuilder page, PlotSeries series, PlotArea area, int index)
    {
        page.Layer = "series";
        if (series.Line.Count > 1 && series.Line.Any(p => p.ExpandedUncertainty > 0))
        {
            // The band's edges as thin lines: fills of several series would hide one another.
            var edge = new Pen(Pens[index % Pens.Length].Colour.Tint(0.5), 0.13);
            page.Polyline([.. series.Line.Select(p => area.At(p.X, p.Y + p.ExpandedUncertainty))], edge);
            page.Polyline([.. series.Line.Select(p => area.At(p.X, p.Y - p.ExpandedUncertainty))], edge);
        }

        if (series.Line.Count > 1)
        {
            page.Polyline([.. series.Line.Select(p => area.At(p.X, p.Y))], Pens[index % Pens.Length]);
        }

        foreach (var mark in series.Marks)
        {
            if (mark.ExpandedUncertainty > 0)
            {
                var (low, high) = (area.At(mark.X, mark.Y - mark.ExpandedUncertainty), area.At(mark.X, mark.Y + mark.ExpandedUncertainty));
                page.Lines([(low, high), (low.Moved(-0.7, 0), low.Moved(0.7, 0)), (high.Moved(-0.7, 0), high.Moved(0.7, 0))], Bar);
            }

            Mark(page, area.At(mark.X, mark.Y), index);
        }
    }

    private static void Mark(PageBuilder page, PagePoint at, int index)
    {
        var colour = Pens[index % Pens.Length].Colour;
        var pen = new Pen(colour, 0.25);
        switch (index % Pens.Length)
        {
            case 0:
                page.Path([Contour.Circle(at, MarkMm * 0.8)], colour, null);
                break;
            case 1:
                page.Rectangle(at.XMm - (MarkMm * 0.8), at.YMm - (MarkMm * 0.8), MarkMm * 1.6, MarkMm * 1.6, Colour.White, pen);
                break;
            case 2:
                page.Path([new([at.Moved(0, -MarkMm), at.Moved(MarkMm, MarkMm * 0.8), at.Moved(-MarkMm, MarkMm * 0.8)], true)], Colour.White, pen);
                break;
            default:
                page.Path([new([at.Moved(0, -MarkMm), at.Moved(MarkMm, 0), at.Moved(0, MarkMm), at.Moved(-MarkMm, 0)], true)], Colour.White, pen);
                break;
        }
    }

    private sealed record PlotArea(double Left, double Top, double Right, double Bottom, PlotAxis Along, PlotAxis Up)
    {
        public double X(double value) => Left + (Along.Share(value) * (Right - Left));

        public double Y(double value) => Bottom - (Up.Share(value) * (Bottom - Top));

        public PagePoint At(double x, double y) => new(X(x), Y(y));

        public bool Holds(double x) => x >= Along.From - 1e-9 && x <= Along.To + 1e-9;
    }
}
