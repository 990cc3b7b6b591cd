using System.Globalization;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.TargetShapes;

/// <summary>A target shape between the own section and the reference: the metal to remove is tinted, the stretches that a limit held back
/// are drawn wide.</summary>
public static class TargetShapeDrawing
{
    private const double MarginMm = 8;
    private const double FigureRoomMm = 14;
    private const double LineMm = 4.6;
    private const double SampleMm = 12;
    private const double LeastWidthMm = 150;
    private const double LargestFigureMm = 130;

    private static readonly double[] Scales = [1, 2, 3, 5];
    private static readonly Colour Metal = new(214, 226, 240);
    private static readonly Colour Limit = new(190, 78, 0);
    private static readonly Pen OwnPen = new(Colour.Grey(110), 0.25) { IsRound = true };
    private static readonly Pen ReferencePen = new(Colour.Grey(90), 0.22) { IsRound = true, DashesMm = [1.6, 1] };
    private static readonly Pen TargetPen = new(Ink.Line, 0.45) { IsRound = true };
    private static readonly Pen LimitPen = new(Limit, 1.1) { IsRound = true };

    /// <summary>Draws a target. The page is as large as the drawing needs.</summary>
    /// <param name="own">The own section's outline, mm.</param>
    /// <param name="reference">The reference as laid on it.</param>
    /// <param name="target">The target, same frame.</param>
    /// <param name="caption">What to write.</param>
    public static Page Build(Outline own, Outline reference, Outline target, TargetShapeCaption caption)
    {
        ArgumentNullException.ThrowIfNull(own);
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(target);
        ArgumentNullException.ThrowIfNull(caption);
        var box = OutlineBox.Of(own, reference, target);
        var scale = Scales.Last(s => s == 1 || s * Math.Max(box.Width, box.Height) <= LargestFigureMm);
        var legend = Legend(caption, scale);
        var pageWidth = Math.Max(LeastWidthMm, (2 * MarginMm) + Math.Max(
            (box.Width * scale) + (2 * FigureRoomMm),
            Math.Max(StrokeFont.WidthMm(caption.Title, Ink.TitleHeightMm), legend.Max(line => SampleMm + 3 + StrokeFont.WidthMm(line.Text, Ink.TextHeightMm)))));
        var notes = caption.Notes.SelectMany(note => StrokeFont.Wrapped(note, Ink.TextHeightMm, pageWidth - (2 * MarginMm))).ToList();
        var headHeight = MarginMm + Ink.TitleHeightMm + 2 + (notes.Count * LineMm) + 3;
        var figureHeight = (box.Height * scale) + (2 * FigureRoomMm);
        var pageHeight = headHeight + figureHeight + (legend.Count * LineMm) + 12 + MarginMm;
        var page = new PageBuilder(pageWidth, pageHeight, caption.Title) { Layer = "text" };
        page.Text(new(MarginMm, MarginMm + Ink.TitleHeightMm), caption.Title, Ink.TitleHeightMm, Ink.Text, isBold: true);
        for (var i = 0; i < notes.Count; i++)
        {
            page.Text(new(MarginMm, MarginMm + Ink.TitleHeightMm + 2 + ((i + 1) * LineMm)), notes[i], Ink.TextHeightMm, Ink.Text);
        }

        var centre = new PagePoint(pageWidth / 2, headHeight + (figureHeight / 2));
        var view = SectionView.Centred(centre, box, scale);
        Figure(page, view, (own, reference, target), caption);
        page.Layer = "centre";
        page.Text(view.ToPage(new((box.Left + box.Right) / 2, box.Top)).Moved(0, -6), "roof", Ink.SmallHeightMm, Ink.Faint, TextAnchor.Middle);
        page.Text(view.ToPage(new((box.Left + box.Right) / 2, box.Bottom)).Moved(0, 8), "floor", Ink.SmallHeightMm, Ink.Faint, TextAnchor.Middle);
        page.Layer = "legend";
        var y = headHeight + figureHeight + 3;
        foreach (var (text, sample) in legend)
        {
            sample(page, new(MarginMm, y - (Ink.TextHeightMm / 2)));
            page.Text(new(MarginMm + SampleMm + 3, y), text, Ink.TextHeightMm, Ink.Text);
            y += LineMm;
        }

        page.Layer = "scale";
        var (barMm, barLabel) = caption.Unit == LengthUnit.Inch ? (12.7, "0.5 in") : (10.0, "10 mm");
        DimensionLine.ScaleBar(page, new(MarginMm, pageHeight - MarginMm), barMm, scale, barLabel);
        return page.Build();
    }

    private static void Figure(
        PageBuilder page, SectionView view, (Outline Own, Outline Reference, Outline Target) outlines, TargetShapeCaption caption)
    {
        page.Layer = "metal";
        page.Path([view.ToContour(outlines.Own), view.ToContour(outlines.Target)], Metal, null);
        page.Layer = "held";
        var centroid = PolygonMoments.Of(outlines.Own.Points).Centroid;
        foreach (var (_, from, to) in caption.Held)
        {
            foreach (var run in Runs(outlines.Target, centroid, from, to))
            {
                page.Path([new([.. run.Select(view.ToPage)], IsClosed: false)], null, LimitPen);
            }
        }

        page.Layer = "reference";
        page.Path([view.ToContour(outlines.Reference)], null, ReferencePen);
        page.Layer = "own";
        page.Path([view.ToContour(outlines.Own)], null, OwnPen);
        page.Layer = "target";
        page.Path([view.ToContour(outlines.Target)], null, TargetPen);
    }

    /// <summary>The runs of corners whose directions from the centroid lie from one angle counter-clockwise to another, degrees.</summary>
    public static IEnumerable<List<Metrology.Frames.SectionPoint>> Runs(
        Outline outline, Metrology.Frames.SectionPoint centroid, double fromDeg, double toDeg)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return RunsWithin(outline, centroid, fromDeg, toDeg);
    }

    private static IEnumerable<List<Metrology.Frames.SectionPoint>> RunsWithin(
        Outline outline, Metrology.Frames.SectionPoint centroid, double fromDeg, double toDeg)
    {
        var span = toDeg - fromDeg >= 360 ? 360 : Positive(toDeg - fromDeg);
        bool IsWithin(int i) =>
            Positive(double.RadiansToDegrees(Math.Atan2(outline[i].YMm - centroid.YMm, outline[i].XMm - centroid.XMm)) - fromDeg) <= span;
        var outside = Enumerable.Range(0, outline.Count).FirstOrDefault(i => !IsWithin(i), -1);
        if (outside < 0)
        {
            yield return [.. Enumerable.Range(0, outline.Count + 1).Select(i => outline[i])];
            yield break;
        }

        var run = new List<Metrology.Frames.SectionPoint>();
        for (var i = outside; i <= outside + outline.Count; i++)
        {
            if (IsWithin(i % outline.Count))
            {
                run.Add(outline[i]);
            }
            else if (run.Count > 1)
            {
                yield return run;
                run = [];
            }
            else
            {
                run.Clear();
            }
        }
    }

    private static double Positive(double degrees) => ((degrees % 360) + 360) % 360;

    private static List<(string Text, Action<PageBuilder, PagePoint> Sample)> Legend(TargetShapeCaption caption, double scale)
    {
        var legend = new List<(string, Action<PageBuilder, PagePoint>)>
        {
            ("target", (page, at) => page.Line(at, at.Moved(SampleMm, 0), TargetPen)),
            ($"own: {caption.OwnName}", (page, at) => page.Line(at, at.Moved(SampleMm, 0), OwnPen)),
            ($"reference: {caption.ReferenceName}", (page, at) => page.Line(at, at.Moved(SampleMm, 0), ReferencePen)),
            ("metal to remove", (page, at) => page.Rectangle(at.XMm, at.YMm - 1.3, SampleMm, 2.6, Metal, null)),
        };
        foreach (var text in caption.Held.Select(held => held.Limit).Distinct())
        {
            legend.Add(($"held back: {text}", (page, at) => page.Line(at, at.Moved(SampleMm, 0), LimitPen)));
        }

        legend.Add((string.Create(CultureInfo.InvariantCulture, $"Drawn {scale:0}:1"), (_, _) => { }));
        return legend;
    }
}
