using System.Globalization;
using SectionScan.Drawings.Comparisons;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Porting.Joints;

namespace SectionScan.Drawings.Joints;

/// <summary>Pictures of a matched joint: the whole joint seen with the flow, and the step round each opening, enlarged.</summary>
public static class JointDrawing
{
    private const double MarginMm = 8;
    private const double LabelRoomMm = 18;
    private const double LegendLineMm = 5;
    private const double SampleMm = 12;
    private const double LargestFigureMm = 150;
    private const double LargestInReportMm = 100;
    private static readonly double[] Scales = [1, 2, 3, 4];
    private static readonly Colour FacingFill = DivergingPalette.At(0.7);
    private static readonly Colour StayingFill = DivergingPalette.At(-0.35);

    /// <summary>The whole joint, seen with the flow, enlarged where it is small.</summary>
    /// <param name="match">The joint.</param>
    /// <param name="title">The head line.</param>
    /// <param name="unit">What lengths are labelled in.</param>
    /// <param name="isInReport">True where figures in words stand below it on the same sheet.</param>
    public static Page Whole(JointMatch match, string title, LengthUnit unit, bool isInReport = false)
    {
        ArgumentNullException.ThrowIfNull(match);
        var largest = isInReport ? LargestInReportMm : LargestFigureMm;
        var box = JointFigure.BoxOf(match, isMirrored: false);
        var scale = Scales.Last(s => s == 1 || s * Math.Max(box.Width, box.Height) <= largest);
        var notes = Notes(match, unit);
        var legend = Legend(match);
        var width = (2 * MarginMm) + new[]
        {
            (box.Width * scale) + (2 * LabelRoomMm), StrokeFont.WidthMm(title, Ink.TitleHeightMm),
            notes.Max(note => StrokeFont.WidthMm(note, Ink.TextHeightMm)),
            legend.Max(line => SampleMm + 3 + StrokeFont.WidthMm(line.Text, Ink.TextHeightMm)),
        }.Max();
        var head = MarginMm + Ink.TitleHeightMm + 2 + (notes.Count * 4.2);
        var figure = (box.Height * scale) + LabelRoomMm;
        var page = new PageBuilder(width, head + figure + (legend.Count * LegendLineMm) + 12 + MarginMm, title);
        var centre = new PagePoint(width / 2, head + (figure / 2));
        var view = SectionView.Centred(centre, box, scale);
        var drawn = new JointFigure(match, view, isMirrored: false);

        page.Layer = "text";
        page.Text(new(MarginMm, MarginMm + Ink.TitleHeightMm), title, Ink.TitleHeightMm, Ink.Text, isBold: true);
        for (var i = 0; i < notes.Count; i++)
        {
            page.Text(new(MarginMm, MarginMm + Ink.TitleHeightMm + 5.2 + (i * 4.2)), notes[i], Ink.TextHeightMm, Ink.Text);
        }

        drawn.Areas(page, FacingFill, StayingFill);
        drawn.Outlines(page, withCutLine: false);
        drawn.Names(page, opening => [opening.Port.Name, opening.Manifold.Name]);
        Labels(page, match, drawn, unit);
        page.Layer = "legend";
        var y = head + figure + 4;
        foreach (var (text, sample) in legend)
        {
            sample(page, new(MarginMm, y - (Ink.TextHeightMm / 2)));
            page.Text(new(MarginMm + SampleMm + 3, y), text, Ink.TextHeightMm, Ink.Text);
            y += LegendLineMm;
        }

        page.Layer = "scale";
        var (barMm, barLabel) = unit == LengthUnit.Inch ? (12.7, "0.5 in") : (10.0, "10 mm");
        DimensionLine.ScaleBar(
            page, new(MarginMm, page.HeightMm - MarginMm), barMm, scale, isInReport ? barLabel : string.Create(CultureInfo.InvariantCulture, $"{barLabel}, drawn {scale:0}:1"));
        return page.Build();
    }

    /// <summary>The step round one opening, enlarged, on the port's edge.</summary>
    public static Page Steps(JointMatch match, OpeningMatch opening, LengthUnit unit, bool isInReport = false)
    {
        ArgumentNullException.ThrowIfNull(match);
        ArgumentNullException.ThrowIfNull(opening);
        var isPort = match.Downstream == JointSide.Port;
        var notes = new List<string>
        {
            $"seen with the flow; rms step {MeasureText.Length(new(opening.RmsStepMm, 0), unit)}",
            double.IsNaN(opening.StepStandardUncertaintyMm)
                ? "uncertainty of a step not known"
                : $"U of a step {MeasureText.Length(new(2 * opening.StepStandardUncertaintyMm, 0), unit)} (k = 2)",
        };
        var caption = new ComparisonCaption($"Step round {opening.Port.Name}", $"port, {opening.Port.Name}", $"manifold, {opening.Manifold.Name}")
        {
            Notes = notes,
            Unit = unit,
            OutsideMeaning = isPort ? "the port's edge faces the flow: cut the port" : "the port's edge is behind the flow: may stay",
            InsideMeaning = isPort ? "the manifold's edge is behind the flow: may stay" : "the manifold's edge faces the flow: cut the manifold",
        };
        return ComparisonDrawing.Build(
            opening.Port.Outline, opening.Manifold.Outline, DeviationMark.Of(opening.Steps), isInReport ? caption with { LargestFigureMm = LargestInReportMm } : caption);
    }

    private static List<string> Notes(JointMatch match, LengthUnit unit)
    {
        var placed = match.Placement;
        var moved = $"manifold moved {MeasureText.Deviation(placed.ShiftXMm, unit)} to the right, {MeasureText.Deviation(placed.ShiftYMm, unit)} up, turned "
            + string.Create(CultureInfo.InvariantCulture, $"{placed.Turn.Degrees:+0.00;−0.00;0.00}° from its start");
        return
        [
            "Seen with the flow, which runs " + (match.Order.Flow == JointFlow.Intake ? "from the manifold into the port" : "from the port into the manifold"),
            moved,
        ];
    }

    private static List<(string Text, Action<PageBuilder, PagePoint> Sample)> Legend(JointMatch match)
    {
        var cut = match.Downstream == JointSide.Port ? "port" : "manifold";
        var legend = new List<(string, Action<PageBuilder, PagePoint>)>
        {
            ("port", (page, at) => page.Line(at, at.Moved(SampleMm, 0), JointFigure.PortPen)),
            ("manifold", (page, at) => page.Line(at, at.Moved(SampleMm, 0), JointFigure.ManifoldPen)),
            ($"faces the flow: cut the {cut} to the other part's edge", (page, at) => page.Rectangle(at.XMm, at.YMm - 1.3, SampleMm, 2.6, FacingFill, Ink.Thin)),
            ("behind the flow: may stay; step + where the manifold is wider, − where narrower", (page, at) => page.Rectangle(at.XMm, at.YMm - 1.3, SampleMm, 2.6, StayingFill, null)),
        };
        if (match.Openings.Any(opening => opening.Gasket is not null))
        {
            legend.Insert(2, ("gasket", (page, at) => page.Line(at, at.Moved(SampleMm, 0), JointFigure.GasketPen)));
        }

        return legend;
    }

    private static void Labels(PageBuilder page, JointMatch match, JointFigure drawn, LengthUnit unit)
    {
        const double LeaderMm = 5;
        page.Layer = "steps";
        foreach (var opening in match.Openings)
        {
            foreach (var stretch in opening.Stretches)
            {
                var (sin, cos) = Math.SinCos(stretch.Deepest.Direction.Radians);
                var start = drawn.At(stretch.Deepest.Reference).Moved(0.8 * cos, -0.8 * sin);
                var end = start.Moved(LeaderMm * cos, -LeaderMm * sin);
                page.Line(start, end, Ink.Thin);
                var anchor = cos > 0.35 ? TextAnchor.Start : cos < -0.35 ? TextAnchor.End : TextAnchor.Middle;
                page.Text(
                    end.Moved(cos, (-2.4 * sin) + (Ink.SmallHeightMm / 2)), MeasureText.Deviation(stretch.Deepest.DeviationMm, unit), Ink.SmallHeightMm,
                    Ink.Text, anchor, isBold: stretch.IsFacingFlow);
            }
        }
    }
}
