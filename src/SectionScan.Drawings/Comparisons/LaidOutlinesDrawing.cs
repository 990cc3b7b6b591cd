using System.Globalization;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Plots;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Drawings.Comparisons;

/// <summary>Several outlines of one station one over the other, and below how far the wall of each lies outside the one that all were laid
/// on, unrolled from the right wall over roof, left wall and floor. Both with the same pens.</summary>
public static class LaidOutlinesDrawing
{
    private const double WidthMm = 170;
    private const double MarginMm = 6;
    private const double FigureMm = 100;
    private const double PlotMm = 84;
    private const double LineMm = 4.4;

    private static readonly double[] Scales = [0.5, 1, 1.5, 2, 2.5, 3, 4, 5];
    private static readonly Pen MarkPen = new(new(190, 78, 0), 0.35);

    /// <summary>Draws the page.</summary>
    /// <param name="outlines">Two or more; the first stands for the one that all were laid on, unless a name says otherwise.</param>
    /// <param name="caption">What to write.</param>
    public static Page Build(IReadOnlyList<LaidOutline> outlines, LaidOutlinesCaption caption)
    {
        ArgumentNullException.ThrowIfNull(outlines);
        ArgumentNullException.ThrowIfNull(caption);
        var notes = caption.Notes.SelectMany(note => StrokeFont.Wrapped(note, Ink.TextHeightMm, WidthMm - (2 * MarginMm))).ToList();
        var figureTop = MarginMm + Ink.TitleHeightMm + 3 + (notes.Count * LineMm);
        var page = new PageBuilder(WidthMm, figureTop + FigureMm + PlotMm + MarginMm, caption.Title) { Layer = "text" };
        page.Text(new(MarginMm, MarginMm + Ink.TitleHeightMm), caption.Title, Ink.TitleHeightMm, Ink.Text, isBold: true);
        for (var i = 0; i < notes.Count; i++)
        {
            page.Text(new(MarginMm, MarginMm + Ink.TitleHeightMm + 1.5 + ((i + 1) * LineMm)), notes[i], Ink.TextHeightMm, Ink.Text);
        }

        var box = OutlineBox.Of([.. outlines.Select(each => each.Outline)]);
        var scale = Scales.Last(s => s == Scales[0] || (box.Height * s <= FigureMm - 18 && box.Width * s <= WidthMm - 60));
        var middle = new PagePoint(WidthMm / 2, figureTop + (FigureMm / 2));
        var view = SectionView.Centred(middle, box, scale);
        for (var i = 0; i < outlines.Count; i++)
        {
            page.Layer = "outline";
            page.Path([view.ToContour(outlines[i].Outline)], null, LinePlot.PenOf(i));
        }

        page.Layer = "mark";
        var at = view.ToPage(caption.MarkAt);
        page.Path([Contour.Circle(at, 2.2)], null, MarkPen);
        var side = at.XMm >= middle.XMm ? 1 : -1;
        page.Text(at.Moved(side * 4.2, Ink.SmallHeightMm / 2), caption.MarkWords, Ink.SmallHeightMm, Ink.Text, side > 0 ? TextAnchor.Start : TextAnchor.End, isBold: true);
        page.Layer = "scale";
        var (barMm, barLabel) = caption.Unit == LengthUnit.Inch ? (12.7, "0.5 in") : (10.0, "10 mm");
        DimensionLine.ScaleBar(page, new(MarginMm, figureTop + FigureMm - 4), barMm, scale, string.Create(CultureInfo.InvariantCulture, $"{barLabel}, drawn {scale:0.#}:1"));
        page.Add(Courses(outlines, caption).Items.Select(item => item.Placed(new(0, figureTop + FigureMm), 1)));
        return page.Build();
    }

    private static Page Courses(IReadOnlyList<LaidOutline> outlines, LaidOutlinesCaption caption)
    {
        var (perMm, unit) = caption.Unit == LengthUnit.Inch ? (1 / Inch.Mm, "in") : (1.0, "mm");
        return LinePlot.Build(
            new($"How far each wall lies outside that of {caption.LaidOn}", "Direction from the middle, degrees counter-clockwise from the right wall", unit)
            {
                WidthMm = WidthMm,
                HeightMm = PlotMm,
                Places = [(0, "right wall"), (90, "roof"), (180, "left wall"), (270, "floor"), (360, "right wall")],
            },
            [.. outlines.Select(each => new PlotSeries(each.Name, Course(each, perMm), []))]);
    }

    // The course from 0 to 360 degrees, closed at both ends.
    private static List<PlotPoint> Course(LaidOutline outline, double perMm)
    {
        var points = outline.Course.Select(place => new PlotPoint(((place.DirectionDeg % 360) + 360) % 360, place.DeviationMm * perMm)).OrderBy(point => point.X).ToList();
        return [new(0, points[0].Y), .. points, new(360, points[0].Y)];
    }
}

/// <summary>What stands beside several outlines laid on each other.</summary>
/// <param name="Title">The head line: "Spread, station 3".</param>
/// <param name="LaidOn">The name of the outline that all were laid on.</param>
/// <param name="MarkAt">The place to point out, mm.</param>
/// <param name="MarkWords">What to say of it.</param>
/// <param name="Notes">Sentences below the head line.</param>
/// <param name="Unit">The unit shown.</param>
public sealed record LaidOutlinesCaption(
    string Title, string LaidOn, SectionPoint MarkAt, string MarkWords, IReadOnlyList<string> Notes, LengthUnit Unit);
