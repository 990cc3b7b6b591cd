using System.Globalization;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Targets;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Joints;

namespace SectionScan.Drawings.Joints;

/// <summary>The two-sided template of a joint at actual size: one page to lay on the port face, its mirror image to lay on the manifold.
/// Printed back to back, both pages show every line at the same place of the paper.</summary>
public static class JointTemplate
{
    private const double MarginMm = 12;
    private const double HeadMm = 30;
    private const double FootMm = 22;
    private const double RegisterMm = 4;
    private const double AcrossMm = 100;
    private const double UpMm = 100;
    private const double StudRadiusMm = 1;
    private const int StudCorners = 36;

    /// <summary>Builds both pages, the port's first.</summary>
    /// <param name="match">The joint.</param>
    /// <param name="title">The head line.</param>
    /// <param name="paper">The paper; it is turned on its side when the joint needs it.</param>
    /// <returns>The pages, or <c>joint-template-too-large</c>.</returns>
    public static Result<IReadOnlyList<Page>> Build(JointMatch match, string title, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(match);
        ArgumentNullException.ThrowIfNull(paper);
        var box = JointFigure.BoxOf(match, isMirrored: false);
        var sheet = Holds(paper, box) ? paper : paper.Landscape;
        if (!Holds(sheet, box))
        {
            return new Problem(
                "joint-template-too-large",
                string.Create(CultureInfo.InvariantCulture, $"The joint is {box.Width:0} × {box.Height:0} mm and does not fit on {paper.Name} paper at actual size."),
                title,
                "Choose a larger paper with --paper.");
        }

        var portIsMirrored = match.Order.Flow == JointFlow.Exhaust;
        return new[]
        {
            Side(match, title, sheet, JointSide.Port, portIsMirrored),
            Side(match, title, sheet, JointSide.Manifold, !portIsMirrored),
        };
    }

    /// <summary>One side as lines for a cutter, true size, in the joint's frame or its mirror image as the side is laid on its part. Layers:
    /// port, manifold, gasket, the line to cut to, and the studs' holes, which hold both sides on each other.</summary>
    /// <param name="match">The joint.</param>
    /// <param name="side">The part to lay it on.</param>
    /// <returns>One line or more.</returns>
    public static IReadOnlyList<DxfPolyline> ToDxf(JointMatch match, JointSide side)
    {
        ArgumentNullException.ThrowIfNull(match);
        var isMirrored = (match.Order.Flow == JointFlow.Exhaust) == (side == JointSide.Port);
        var lines = new List<DxfPolyline>();
        foreach (var opening in match.Openings)
        {
            Add("port", opening.Port.Outline.Points.ToArray());
            Add("manifold", opening.Manifold.Outline.Points.ToArray());
            if (match.IsCutNeeded)
            {
                Add("cut-to", opening.CutTo.Points.ToArray());
            }

            if (opening.Gasket is { } gasket)
            {
                Add("gasket", gasket.Outline.Points.ToArray());
            }
        }

        foreach (var stud in side == JointSide.Port ? match.PortStuds : match.ManifoldStuds)
        {
            Add("stud", [.. Enumerable.Range(0, StudCorners).Select(k => Math.SinCos(2 * Math.PI * k / StudCorners))
                .Select(turn => new SectionPoint(stud.XMm + (StudRadiusMm * turn.Cos), stud.YMm + (StudRadiusMm * turn.Sin)))]);
        }

        return lines;

        void Add(string layer, IReadOnlyList<SectionPoint> points) =>
            lines.Add(new(layer, isMirrored ? [.. points.Select(p => p with { XMm = -p.XMm })] : points, IsClosed: true));
    }

    private static bool Holds(PaperSize paper, OutlineBox box) =>
        box.Width + (2 * (MarginMm + (2 * RegisterMm))) <= paper.WidthMm && box.Height + HeadMm + FootMm + 8 <= paper.HeightMm;

    private static Page Side(JointMatch match, string title, PaperSize paper, JointSide side, bool isMirrored)
    {
        var part = side == JointSide.Port ? "port face" : "manifold's flange";
        var page = new PageBuilder(paper.WidthMm, paper.HeightMm, $"{title}: {part}");
        var box = JointFigure.BoxOf(match, isMirrored);
        var centre = new PagePoint(paper.WidthMm / 2, HeadMm + ((paper.HeightMm - HeadMm - FootMm) / 2));
        var drawn = new JointFigure(match, new(centre.Moved(-(box.Left + box.Right) / 2, (box.Top + box.Bottom) / 2), 1), isMirrored);
        var isCut = side == match.Downstream;

        page.Layer = "text";
        var widthMm = paper.WidthMm - (2 * MarginMm);
        page.Text(new(MarginMm, MarginMm + 2), $"{title}: lay on the {part}", Ink.TitleHeightMm, Ink.Text, isBold: true);
        var edge = paper.WidthMm > paper.HeightMm ? "short" : "long";
        var y = page.Paragraph(
            new(MarginMm, MarginMm + 8),
            $"{PrintCheck.Print} Both sides: print two-sided, flipped on the {edge} edge, or pin two prints together at the four crosses.",
            Ink.SmallHeightMm, widthMm, Ink.Text);
        page.Paragraph(
            new(MarginMm, y),
            !match.IsCutNeeded ? "No edge faces the flow: nothing need be cut. Thin line: port; dashed: manifold."
                : isCut ? "Cut this part to the heavy line: then no edge faces the flow. Thin line: port; dashed: manifold."
                : "This part need not be cut. Heavy line: to where the other part is cut. Thin line: port; dashed: manifold.",
            Ink.SmallHeightMm, widthMm, Ink.Text);
        drawn.Areas(page, Colour.Grey(200), Colour.White);
        drawn.Outlines(page, withCutLine: match.IsCutNeeded);
        drawn.Names(page, opening => [side == JointSide.Port ? opening.Port.Name : opening.Manifold.Name, "roof ↑"]);
        if (match.IsCutNeeded)
        {
            page.Layer = "text";
            page.Paragraph(new(MarginMm + (3 * RegisterMm), paper.HeightMm - FootMm - 1), JointMatch.Caution, Ink.SmallHeightMm, widthMm - (6 * RegisterMm), Ink.Text);
        }

        Register(page, paper);
        CheckBar.Across(page, new((paper.WidthMm - AcrossMm) / 2, paper.HeightMm - MarginMm), AcrossMm);
        CheckBar.Up(page, new(isMirrored ? paper.WidthMm - MarginMm + 4 : MarginMm - 4, (paper.HeightMm + UpMm) / 2), UpMm);
        return page.Build();
    }

    /// <summary>Crosses near the corners, alike on both sides: they show whether the two sides lie on each other.</summary>
    private static void Register(PageBuilder page, PaperSize paper)
    {
        page.Layer = "register";
        foreach (var x in new[] { MarginMm + RegisterMm, paper.WidthMm - MarginMm - RegisterMm })
        {
            foreach (var y in new[] { HeadMm + RegisterMm, paper.HeightMm - FootMm })
            {
                var at = new PagePoint(x, y);
                page.Lines([(at.Moved(-RegisterMm, 0), at.Moved(RegisterMm, 0)), (at.Moved(0, -RegisterMm), at.Moved(0, RegisterMm))], Ink.Thin);
                page.Path([Contour.Circle(at, 2)], null, Ink.Thin);
            }
        }
    }
}
