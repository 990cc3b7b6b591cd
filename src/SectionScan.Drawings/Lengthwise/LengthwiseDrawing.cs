using System.Globalization;
using SectionScan.Drawings.Comparisons;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Targets;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Profiles;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Lengthwise;

namespace SectionScan.Drawings.Lengthwise;

/// <summary>Drawings of a port cut lengthwise: the shape with its heights and radii, two shapes on each other, and the template.</summary>
public static class LengthwiseDrawing
{
    private const double MarginMm = 10;
    private const double RoomMm = 16;
    private const double WhiskerStepMm = 2;
    private const double WhiskerReachMm = 8;
    private static readonly double[] Factors = [1, 2, 5, 10, 20, 50];

    /// <summary>From one height along the centreline to the next, in words.</summary>
    public static string StepName(LengthUnit unit) => unit == LengthUnit.Inch ? "0.5 in" : "10 mm";

    /// <summary>The shape at true size: floor, roof, ends, centreline with the height at even steps, the circles of the radii.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="notes">Short lines below the head line.</param>
    /// <param name="unit">What lengths are labelled in.</param>
    public static Page Shape(LengthwiseShape shape, IReadOnlyList<string> notes, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(shape);
        var (page, figure) = Open(shape.Name, notes, LengthwiseFigure.BoxOf(shape), unit);
        Radius(page, figure, shape.Floor, shape.FloorRadius, "floor", unit);
        Radius(page, figure, shape.Roof, shape.RoofRadius, "roof", unit);
        figure.Centreline(page, shape, withHeights: true, unit);
        page.Layer = "walls";
        page.Path([figure.Whole(shape)], null, LengthwiseFigure.WallPen);
        Ends(page, figure, shape);
        return page.Build();
    }

    /// <summary>Two shapes on each other with the deviation of floor and roof, enlarged.</summary>
    public static Page Comparison(LengthwiseComparison comparison, IReadOnlyList<string> notes, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(notes);
        var largest = comparison.Floor.Concat(comparison.Roof).Max(sample => Math.Abs(sample.DeviationMm));
        var factor = Factors.Last(f => f == 1 || f * largest <= WhiskerReachMm);
        string[] legend =
        [
            .. notes, "full: " + comparison.Reference.Name + ", dashed: " + comparison.Measured.Name,
            "+ orange, outside the reference: metal already gone; − blue, inside: metal left",
            string.Create(CultureInfo.InvariantCulture, $"whiskers {factor:0} times enlarged"),
        ];
        var (page, figure) = Open($"{comparison.Measured.Name} on {comparison.Reference.Name}", legend, LengthwiseFigure.BoxOf(comparison.Reference, comparison.Measured), unit);
        page.Layer = "deviation";
        foreach (var (line, samples, other) in new[] { (comparison.Reference.Floor, comparison.Floor, comparison.Reference.Roof), (comparison.Reference.Roof, comparison.Roof, comparison.Reference.Floor) })
        {
            Whiskers(page, figure, line, samples, other, factor, largest);
        }

        page.Layer = "measured";
        page.Path([figure.Whole(comparison.Measured)], null, LengthwiseFigure.MeasuredPen);
        page.Layer = "reference";
        page.Path([figure.Whole(comparison.Reference)], null, LengthwiseFigure.WallPen);
        page.Layer = "text";
        Label(page, figure, comparison.HighestFloor, unit);
        Label(page, figure, comparison.DeepestFloor, unit);
        Ends(page, figure, comparison.Reference);
        return page.Build();
    }

    /// <summary>The template at actual size: cut round for the whole shape; cut along the centreline for a floor and a roof template.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="unit">What the ticks along the centreline are numbered in.</param>
    /// <returns>The page, or <c>lengthwise-template-too-large</c>.</returns>
    public static Result<Page> Template(LengthwiseShape shape, PaperSize paper, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(paper);
        const double HeadMm = 32;
        const double FootMm = 20;
        var box = LengthwiseFigure.BoxOf(shape);
        var sheet = new[] { paper, paper.Landscape }.FirstOrDefault(p => box.Width + 40 <= p.WidthMm && box.Height + HeadMm + FootMm <= p.HeightMm);
        if (sheet is null)
        {
            return new Problem(
                "lengthwise-template-too-large",
                string.Create(CultureInfo.InvariantCulture, $"The shape is {box.Width:0} × {box.Height:0} mm and does not fit on {paper.Name} paper at actual size."),
                shape.Name,
                "Choose a larger paper with --paper.");
        }

        var page = new PageBuilder(sheet.WidthMm, sheet.HeightMm, $"{shape.Name}: floor and roof template") { Layer = "text" };
        page.Text(new(MarginMm + 2, MarginMm + 4), $"{shape.Name}: floor and roof template", Ink.TitleHeightMm, Ink.Text, isBold: true);
        page.Paragraph(
            new(MarginMm + 2, MarginMm + 11),
            PrintCheck.Print + " Cut along the heavy line; cut along the centreline for one template of the floor and one of the roof. Ticks: " + (unit == LengthUnit.Inch ? "in" : "mm") + " from the face.",
            Ink.SmallHeightMm, sheet.WidthMm - (2 * MarginMm) - 4, Ink.Text);
        var centre = new PagePoint(sheet.WidthMm / 2, HeadMm + ((sheet.HeightMm - HeadMm - FootMm) / 2));
        var figure = new LengthwiseFigure(new(centre.Moved(-(box.Left + box.Right) / 2, (box.Top + box.Bottom) / 2), 1));
        page.Layer = "walls";
        page.Path([figure.Whole(shape)], null, LengthwiseFigure.WallPen);
        figure.Centreline(page, shape, withHeights: false, unit);
        Ends(page, figure, shape);
        CheckBar.Across(page, new((sheet.WidthMm - 100) / 2, sheet.HeightMm - MarginMm), 100);
        CheckBar.Up(page, new(MarginMm, (sheet.HeightMm + 100) / 2), 100);
        return page.Build();
    }

    /// <summary>The template's lines for a cutter, true size: the cut round floor, roof and both ends, and the centreline.</summary>
    public static IReadOnlyList<DxfPolyline> ToDxf(LengthwiseShape shape)
    {
        ArgumentNullException.ThrowIfNull(shape);
        return
        [
            new("cut", [.. shape.Floor.Points.ToArray(), .. shape.Roof.Points.ToArray().Reverse()], IsClosed: true),
            new("centreline", [.. shape.Centreline.Select(place => place.Place)], IsClosed: false),
        ];
    }

    private static (PageBuilder Page, LengthwiseFigure Figure) Open(string title, IReadOnlyList<string> notes, OutlineBox box, LengthUnit unit)
    {
        var head = MarginMm + Ink.TitleHeightMm + 3 + (notes.Count * 4.2);
        var width = (2 * MarginMm) + Math.Max(
            box.Width + (2 * RoomMm), notes.Select(note => StrokeFont.WidthMm(note, Ink.TextHeightMm)).Append(StrokeFont.WidthMm(title, Ink.TitleHeightMm)).Max());
        var page = new PageBuilder(width, head + box.Height + (2 * RoomMm) + MarginMm + 4, title) { Layer = "text" };
        page.Text(new(MarginMm, MarginMm + Ink.TitleHeightMm), title, Ink.TitleHeightMm, Ink.Text, isBold: true);
        for (var i = 0; i < notes.Count; i++)
        {
            page.Text(new(MarginMm, MarginMm + Ink.TitleHeightMm + 5.2 + (i * 4.2)), notes[i], Ink.TextHeightMm, Ink.Text);
        }

        page.Layer = "scale";
        var (barMm, barLabel) = unit == LengthUnit.Inch ? (Inch.Mm, "1 in") : (20, "20 mm");
        DimensionLine.ScaleBar(page, new(MarginMm, page.HeightMm - MarginMm), barMm, 1, barLabel + ", drawn 1:1");
        var centre = new PagePoint(width / 2, head + RoomMm + (box.Height / 2));
        return (page, new(new(centre.Moved(-(box.Left + box.Right) / 2, (box.Top + box.Bottom) / 2), 1)));
    }

    private static void Ends(PageBuilder page, LengthwiseFigure figure, LengthwiseShape shape)
    {
        page.Layer = "text";
        var inside = shape.At(shape.LengthMm / 2).Place;
        foreach (var (end, name) in new[] { (shape.Face, "face"), (shape.Seat, "seat") })
        {
            page.Text(Outside(figure, end.Middle, inside, 6), name, Ink.TextHeightMm, Ink.Text, TextAnchor.Middle);
        }

        foreach (var (line, name) in new[] { (shape.Floor, "floor"), (shape.Roof, "roof") })
        {
            var place = line.At(line.LengthMm * 0.2);
            page.Text(Outside(figure, place, shape.At(shape.LengthMm * 0.2).Place, 5), name, Ink.TextHeightMm, Ink.Text, TextAnchor.Middle);
        }
    }

    private static PagePoint Outside(LengthwiseFigure figure, SectionPoint place, SectionPoint inside, double byMm)
    {
        var length = inside.DistanceTo(place);
        var beyond = new SectionPoint(place.XMm + (byMm * (place.XMm - inside.XMm) / length), place.YMm + (byMm * (place.YMm - inside.YMm) / length));
        return figure.At(beyond).Moved(0, Ink.TextHeightMm / 2);
    }

    private static void Radius(PageBuilder page, LengthwiseFigure figure, Profile wall, Result<ArcRadius> found, string name, LengthUnit unit)
    {
        if (!found.TryGet(out var radius, out _))
        {
            return;
        }

        page.Layer = "radii";
        var middle = wall.Even(0.5).MinBy(at => Math.Abs(at.LengthMm - (wall.LengthMm / 2))).Place;
        var direction = Math.Atan2(middle.YMm - radius.Centre.YMm, middle.XMm - radius.Centre.XMm);
        var half = Math.Abs(radius.Arc.Radians) / 2;
        page.Path(
            [figure.Line(Enumerable.Range(0, 61).Select(k => Math.SinCos(direction - half + (2 * half * k / 60)))
                .Select(turn => new SectionPoint(radius.Centre.XMm + (radius.RadiusMm.Value * turn.Cos), radius.Centre.YMm + (radius.RadiusMm.Value * turn.Sin))))],
            null, new(DivergingPalette.At(0.9), 0.25));

        // Outside the port: on the floor toward the circle's centre, on the roof away from it.
        var away = name == "floor" ? -9.0 : 7.0;
        var at = new SectionPoint(middle.XMm + (away * Math.Cos(direction)), middle.YMm + (away * Math.Sin(direction)));
        page.Text(
            figure.At(at), "R " + MeasureText.Length(radius.RadiusMm, unit), Ink.TextHeightMm, Ink.Text, name == "floor" ? TextAnchor.End : TextAnchor.Start);
    }

    private static void Whiskers(
        PageBuilder page, LengthwiseFigure figure, Profile line, IReadOnlyList<ProfileSample> samples, Profile other, double factor, double largest)
    {
        var next = 0.0;
        var opposite = other.At(other.LengthMm / 2);
        var middle = line.At(line.LengthMm / 2);
        var (mx, my) = line.DirectionAt(line.LengthMm / 2, 2);
        var outwardIsRight = ((opposite.YMm - middle.YMm) * mx) - ((opposite.XMm - middle.XMm) * my) > 0;
        foreach (var sample in samples.Where(sample => sample.LengthMm >= next))
        {
            next = sample.LengthMm + WhiskerStepMm;
            var (dx, dy) = line.DirectionAt(sample.LengthMm, 1);
            var (nx, ny) = outwardIsRight ? (dy, -dx) : (-dy, dx);
            var tip = new SectionPoint(sample.Place.XMm + (factor * sample.DeviationMm * nx), sample.Place.YMm + (factor * sample.DeviationMm * ny));
            page.Line(
                figure.At(sample.Place), figure.At(tip),
                new(DivergingPalette.At((0.35 * Math.Sign(sample.DeviationMm)) + (0.65 * sample.DeviationMm / Math.Max(largest, 1e-9))), 0.4));
        }
    }

    private static void Label(PageBuilder page, LengthwiseFigure figure, ProfileSample sample, LengthUnit unit)
    {
        page.Path([Contour.Circle(figure.At(sample.Place), 0.7)], Ink.Line, null);
        page.Text(figure.At(sample.Place).Moved(2, -3), MeasureText.Deviation(sample.DeviationMm, unit), Ink.SmallHeightMm, Ink.Text, isBold: true);
    }
}
