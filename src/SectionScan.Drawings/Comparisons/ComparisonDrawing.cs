using System.Globalization;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Comparisons;

/// <summary>Two outlines one over the other with the signed deviation as bands and whiskers on the reference's normals. The sign reads
/// three ways: by side (outside or inside the reference), by colour (orange or blue) and by the band's edge (full or dashed).</summary>
public static class ComparisonDrawing
{
    private const double MarginMm = 6;
    private const double LabelRoomMm = 20;
    private const double BandReachMm = 8;
    private const double SmallSideMm = 85;
    private const double SmallFigureMm = 44;
    private const double SmallReachMm = 5;
    private const double WhiskerStepMm = 1.6;
    private const double LegendLineMm = 5;
    private const double SampleMm = 12;

    private static readonly double[] Factors = [1, 2, 5, 10, 20, 50, 100];
    private static readonly double[] Scales = [1, 2, 3, 5];
    private static readonly double[] SmallScales = [0.25, 0.5, 0.75, 1, 1.5, 2, 3];
    private static readonly Pen ReferencePen = new(Ink.Line, 0.4) { IsRound = true };
    private static readonly Pen MeasuredPen = new(Colour.Grey(90), 0.22) { IsRound = true, DashesMm = [1.6, 1] };

    /// <summary>Draws a comparison. The page is as large as the drawing needs.</summary>
    /// <param name="reference">The reference outline, mm, section frame.</param>
    /// <param name="measured">The measured outline, already aligned, same frame.</param>
    /// <param name="marks">The deviations in order round the reference, 3 or more.</param>
    /// <param name="caption">What to write.</param>
    /// <exception cref="ArgumentException">Fewer than three marks, or a deviation that is not finite.</exception>
    public static Page Build(Outline reference, Outline measured, IReadOnlyList<DeviationMark> marks, ComparisonCaption caption)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(caption);
        Check(marks);
        var box = OutlineBox.Of(reference, measured);
        var scale = Scales.Last(s => s == 1 || s * Math.Max(box.Width, box.Height) <= caption.LargestFigureMm);
        var exaggeration = Exaggeration(marks, scale, BandReachMm);
        var reach = LabelRoomMm + (exaggeration * scale * Math.Max(0, marks.Max(mark => mark.DeviationMm)));
        var headHeight = MarginMm + Ink.TitleHeightMm + (caption.Notes.Count * 4.2) + 3;
        var figureHeight = (box.Height * scale) + (2 * (reach - 10));
        var legend = Legend(caption, scale, exaggeration);
        var pageWidth = (2 * MarginMm) + new[]
        {
            (box.Width * scale) + (2 * reach),
            legend.Max(line => SampleMm + 3 + StrokeFont.WidthMm(line.Text, Ink.TextHeightMm)),
            StrokeFont.WidthMm(caption.Title, Ink.TitleHeightMm),
            caption.Notes.Select(note => StrokeFont.WidthMm(note, Ink.TextHeightMm)).DefaultIfEmpty().Max(),
        }.Max();
        var pageHeight = headHeight + figureHeight + (legend.Count * LegendLineMm) + MarginMm + 10;

        var page = new PageBuilder(pageWidth, pageHeight, caption.Title);
        var centre = new PagePoint(pageWidth / 2, headHeight + (figureHeight / 2));
        var view = SectionView.Centred(centre, box, scale);
        var bands = new DeviationBands(marks, view, exaggeration);

        Head(page, caption);
        Figure(page, reference, measured, marks, bands, view, box);
        Extremes(page, bands, marks, caption.Unit, Ink.TextHeightMm);
        var y = headHeight + figureHeight + 4;
        foreach (var line in legend)
        {
            page.Layer = "legend";
            line.Sample(page, new(MarginMm, y - (Ink.TextHeightMm / 2)));
            page.Text(new(MarginMm + SampleMm + 3, y), line.Text, Ink.TextHeightMm, Ink.Text);
            y += LegendLineMm;
        }

        ScaleBar(page, pageHeight - MarginMm, caption.Unit, scale, "");
        return page.Build();
    }

    /// <summary>Draws a comparison small enough for two beside each other on a sheet, without the legend: what the lines mean is told
    /// once for all of them.</summary>
    /// <inheritdoc cref="Build"/>
    public static Page Small(Outline reference, Outline measured, IReadOnlyList<DeviationMark> marks, ComparisonCaption caption)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(caption);
        Check(marks);
        const double InsetMm = 2;
        const double FootMm = 7;
        var box = OutlineBox.Of(reference, measured);
        var scale = SmallScales.Last(s => s == SmallScales[0] || s * Math.Max(box.Width, box.Height) <= SmallFigureMm);
        var exaggeration = Exaggeration(marks, scale, SmallReachMm);
        string[] head = [.. StrokeFont.Wrapped(caption.Title, Ink.TextHeightMm, SmallSideMm - (2 * InsetMm))];
        string[] notes = [.. caption.Notes.SelectMany(note => StrokeFont.Wrapped(note, Ink.SmallHeightMm, SmallSideMm - (2 * InsetMm)))];
        var headHeight = InsetMm + (head.Length * 4.4) + (notes.Length * 3.4);

        // Room above and below for what lies outside and, beyond it, one figure.
        var outside = exaggeration * scale * Math.Max(0, marks.Max(mark => mark.DeviationMm));
        var figureHeight = (box.Height * scale) + (2 * (outside + 8.5));
        var page = new PageBuilder(SmallSideMm, headHeight + figureHeight + FootMm, caption.Title) { Layer = "text" };
        var y = InsetMm + Ink.TextHeightMm;
        foreach (var line in head)
        {
            page.Text(new(InsetMm, y), line, Ink.TextHeightMm, Ink.Text, isBold: true);
            y += 4.4;
        }

        foreach (var line in notes)
        {
            page.Text(new(InsetMm, y), line, Ink.SmallHeightMm, Ink.Text);
            y += 3.4;
        }

        var view = SectionView.Centred(new(SmallSideMm / 2, headHeight + (figureHeight / 2)), box, scale);
        var bands = new DeviationBands(marks, view, exaggeration);
        Figure(page, reference, measured, marks, bands, view, box);
        Extremes(page, bands, marks, caption.Unit, Ink.SmallHeightMm);
        ScaleBar(page, page.HeightMm - 2, caption.Unit, scale, exaggeration > 1 ? string.Create(CultureInfo.InvariantCulture, $"; bands {exaggeration:0} times as large") : "");
        return page.Build();
    }

    private static void Check(IReadOnlyList<DeviationMark> marks)
    {
        if (marks.Count < 3 || marks.Any(mark => !double.IsFinite(mark.DeviationMm)))
        {
            throw new ArgumentException($"A comparison has three finite deviations or more, not {marks.Count}.", nameof(marks));
        }
    }

    private static double Exaggeration(IReadOnlyList<DeviationMark> marks, double scale, double reachMm)
    {
        var largest = marks.Max(mark => Math.Abs(mark.DeviationMm));
        return Factors.Last(f => f == 1 || f * scale * largest <= reachMm);
    }

    private static void Figure(
        PageBuilder page, Outline reference, Outline measured, IReadOnlyList<DeviationMark> marks, DeviationBands bands, SectionView view, OutlineBox box)
    {
        CentreLines(page, view, box);
        Bands(page, bands, marks, view);
        page.Layer = "measured";
        page.Path([view.ToContour(measured)], null, MeasuredPen);
        page.Layer = "reference";
        page.Path([view.ToContour(reference)], null, ReferencePen);
    }

    private static void ScaleBar(PageBuilder page, double y, LengthUnit unit, double scale, string more)
    {
        page.Layer = "scale";
        var (barMm, barLabel) = unit == LengthUnit.Inch ? (12.7, "0.5 in") : (10.0, "10 mm");
        DimensionLine.ScaleBar(page, new(MarginMm, y), barMm, scale, barLabel + more);
    }

    private static void Head(PageBuilder page, ComparisonCaption caption)
    {
        page.Layer = "text";
        var y = MarginMm + Ink.TitleHeightMm;
        page.Text(new(MarginMm, y), caption.Title, Ink.TitleHeightMm, Ink.Text, isBold: true);
        y += 5.2;
        foreach (var note in caption.Notes)
        {
            page.Text(new(MarginMm, y), note, Ink.TextHeightMm, Ink.Text);
            y += 4.2;
        }
    }

    private static void CentreLines(PageBuilder page, SectionView view, OutlineBox box)
    {
        const double OverMm = 2;
        page.Layer = "centre";
        page.Lines(
            [
                (view.ToPage(new(box.Left + OverMm, 0)), view.ToPage(new(box.Right - OverMm, 0))),
                (view.ToPage(new(0, box.Top - OverMm)), view.ToPage(new(0, box.Bottom + OverMm))),
            ],
            Ink.Centre);
        page.Text(view.ToPage(new(0, box.Top)).Moved(1.2, 12), "roof", Ink.SmallHeightMm, Ink.Faint);
        page.Text(view.ToPage(new(0, box.Bottom)).Moved(1.2, -10), "floor", Ink.SmallHeightMm, Ink.Faint);
    }

    private static void Bands(
        PageBuilder page,
        DeviationBands bands,
        IReadOnlyList<DeviationMark> marks,
        SectionView view)
    {
        var largest = marks.Max(mark => Math.Abs(mark.DeviationMm));
        foreach (var (sign, layer) in new[] { (1, "outside"), (-1, "inside") })
        {
            var areas = bands.Areas(sign);
            if (areas.Count == 0)
            {
                continue;
            }

            page.Layer = layer;
            page.Path(areas, FillOf(sign), null);
            foreach (var mark in Whiskers(marks, view.Scale).Where(mark => Math.Sign(mark.DeviationMm) == sign))
            {
                // Even a small deviation keeps a hue that tells its sign.
                var colour = DivergingPalette.At((0.35 * sign) + (0.65 * mark.DeviationMm / largest));
                page.Line(bands.Foot(mark), bands.Tip(mark), new(colour, 0.25));
            }

            page.Path(bands.Envelopes(sign), null, EdgeOf(sign));
        }
    }

    // Marks at even steps along the reference on the page.
    private static IEnumerable<DeviationMark> Whiskers(IReadOnlyList<DeviationMark> marks, double scale)
    {
        double at = 0, next = 0;
        for (var i = 0; i < marks.Count; i++)
        {
            at += i == 0 ? 0 : marks[i - 1].Place.DistanceTo(marks[i].Place) * scale;
            if (at >= next)
            {
                yield return marks[i];
                next += WhiskerStepMm * Math.Ceiling((at - next + 1e-9) / WhiskerStepMm);
            }
        }
    }

    private static void Extremes(PageBuilder page, DeviationBands bands, IReadOnlyList<DeviationMark> marks, LengthUnit unit, double capMm)
    {
        page.Layer = "extreme";
        var most = marks.MaxBy(mark => mark.DeviationMm)!;
        var least = marks.MinBy(mark => mark.DeviationMm)!;
        if (most.DeviationMm > 0)
        {
            Label(page, bands, most, unit, capMm);
        }

        if (least.DeviationMm < 0)
        {
            Label(page, bands, least, unit, capMm);
        }
    }

    private static void Label(PageBuilder page, DeviationBands bands, DeviationMark mark, LengthUnit unit, double capMm)
    {
        const double LeaderMm = 4;
        var (foot, tip) = (bands.Foot(mark), bands.Tip(mark));
        var start = mark.DeviationMm > 0 ? tip : foot;
        var end = start.Moved(mark.NormalX * LeaderMm, -mark.NormalY * LeaderMm);
        page.Line(start.Moved(mark.NormalX * 0.5, -mark.NormalY * 0.5), end, Ink.Thin);
        page.Path([Contour.Circle(tip, 0.7)], Ink.Line, null);
        var anchor = mark.NormalX > 0.35 ? TextAnchor.Start : mark.NormalX < -0.35 ? TextAnchor.End : TextAnchor.Middle;
        var text = end.Moved(mark.NormalX * 1.2, -(mark.NormalY * 2.4) + (capMm / 2));
        page.Text(text, MeasureText.Deviation(mark.DeviationMm, unit), capMm, Ink.Text, anchor, isBold: true);
    }

    private static List<(string Text, Action<PageBuilder, PagePoint> Sample)> Legend(
        ComparisonCaption caption,
        double scale,
        double exaggeration)
    {
        var drawn = string.Create(CultureInfo.InvariantCulture, $"Drawn {scale:0}:1; bands show the deviation ")
            + (exaggeration > 1 ? string.Create(CultureInfo.InvariantCulture, $"enlarged a further {exaggeration:0} times") : "at the same scale");
        return
        [
            ($"reference: {caption.ReferenceName}", (page, at) => page.Line(at, at.Moved(SampleMm, 0), ReferencePen)),
            ($"measured: {caption.MeasuredName}", (page, at) => page.Line(at, at.Moved(SampleMm, 0), MeasuredPen)),
            ($"+ outside the reference: {caption.OutsideMeaning}", (page, at) => Swatch(page, at, 1)),
            ($"− inside the reference: {caption.InsideMeaning}", (page, at) => Swatch(page, at, -1)),
            (drawn, (_, _) => { }),
        ];
    }

    private static void Swatch(PageBuilder page, PagePoint at, int sign)
    {
        const double HalfMm = 1.3;
        page.Rectangle(at.XMm, at.YMm - HalfMm, SampleMm, 2 * HalfMm, FillOf(sign), null);
        page.Line(at.Moved(0, sign * HalfMm), at.Moved(SampleMm, sign * HalfMm), ReferencePen);
        page.Line(at.Moved(0, -sign * HalfMm), at.Moved(SampleMm, -sign * HalfMm), EdgeOf(sign));
    }

    private static Colour FillOf(int sign) => DivergingPalette.At(0.4 * sign);

    private static Pen EdgeOf(int sign) => sign > 0
        ? new(DivergingPalette.At(1), 0.35) { IsRound = true }
        : new(DivergingPalette.At(-1), 0.35) { IsRound = true, DashesMm = [0.9, 0.8] };
}
