using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Porting.Joints;

namespace SectionScan.Drawings.Joints;

/// <summary>The outlines of a matched joint on a page, seen with the flow or, mirrored, against it.</summary>
/// <param name="match">The joint.</param>
/// <param name="view">Where its frame lies on the page.</param>
/// <param name="isMirrored">True to draw it as seen against the flow.</param>
internal sealed class JointFigure(JointMatch match, SectionView view, bool isMirrored)
{
    private const double StudMarkMm = 3;

    public static readonly Pen PortPen = new(Ink.Line, 0.3) { IsRound = true };
    public static readonly Pen ManifoldPen = new(Ink.Line, 0.25) { IsRound = true, DashesMm = [2, 1.2] };
    public static readonly Pen GasketPen = new(Ink.Faint, 0.25) { IsRound = true, DashesMm = [0.3, 0.9] };
    public static readonly Pen CutPen = new(Ink.Line, 0.6) { IsRound = true };

    /// <summary>The box round all that is drawn, mm, in the frame drawn.</summary>
    public static OutlineBox BoxOf(JointMatch match, bool isMirrored)
    {
        var box = OutlineBox.Of([.. match.Openings.SelectMany(o => new[] { o.CutTo, o.Gasket?.Outline ?? o.CutTo })]);
        foreach (var stud in match.PortStuds.Concat(match.ManifoldStuds))
        {
            box = new(
                Math.Min(box.Left, stud.XMm - StudMarkMm), Math.Min(box.Bottom, stud.YMm - StudMarkMm),
                Math.Max(box.Right, stud.XMm + StudMarkMm), Math.Max(box.Top, stud.YMm + StudMarkMm));
        }

        return isMirrored ? new(-box.Right, box.Bottom, -box.Left, box.Top) : box;
    }

    /// <summary>The place on the page of a place in the joint's frame.</summary>
    public PagePoint At(SectionPoint place) => view.ToPage(isMirrored ? new(-place.XMm, place.YMm) : place);

    /// <summary>The area that is cut away, and the area that may stay, of every opening.</summary>
    public void Areas(PageBuilder page, Colour facing, Colour staying)
    {
        foreach (var opening in match.Openings)
        {
            var (downstream, upstream) = match.Downstream == JointSide.Port
                ? (opening.Port.Outline, opening.Manifold.Outline)
                : (opening.Manifold.Outline, opening.Port.Outline);
            page.Layer = "stays";
            page.Path([Contour(upstream), Contour(opening.CutTo)], staying, null);
            page.Layer = "cut";
            page.Path([Contour(downstream), Contour(opening.CutTo)], facing, null);
        }
    }

    /// <summary>The outlines of port, manifold and gasket, and the studs.</summary>
    public void Outlines(PageBuilder page, bool withCutLine)
    {
        Each(page, "port", o => o.Port.Outline, PortPen);
        Each(page, "manifold", o => o.Manifold.Outline, ManifoldPen);
        Each(page, "gasket", o => o.Gasket?.Outline, GasketPen);
        if (withCutLine)
        {
            Each(page, "cut-to", o => o.CutTo, CutPen);
        }

        page.Layer = "studs";
        foreach (var at in match.PortStuds.Select(At))
        {
            page.Lines([(at.Moved(-StudMarkMm, 0), at.Moved(StudMarkMm, 0)), (at.Moved(0, -StudMarkMm), at.Moved(0, StudMarkMm))], Ink.Thin);
        }

        foreach (var at in match.ManifoldStuds.Select(At))
        {
            page.Path([Pages.Contour.Circle(at, 1)], null, Ink.Thin);
        }
    }

    /// <summary>Names of the openings at their middles.</summary>
    public void Names(PageBuilder page, Func<OpeningMatch, IEnumerable<string>> lines)
    {
        page.Layer = "text";
        foreach (var opening in match.Openings)
        {
            var at = At(PolygonMoments.Of(opening.Port.Outline.Points).Centroid);
            var texts = lines(opening).ToList();
            for (var i = 0; i < texts.Count; i++)
            {
                var down = (i - ((texts.Count - 1) / 2.0)) * StrokeFont.LineSpacing * Ink.SmallHeightMm;
                page.Text(at.Moved(0, down + (Ink.SmallHeightMm / 2)), texts[i], Ink.SmallHeightMm, Ink.Text, TextAnchor.Middle);
            }
        }
    }

    private void Each(PageBuilder page, string layer, Func<OpeningMatch, Outline?> outline, Pen pen)
    {
        page.Layer = layer;
        foreach (var opening in match.Openings)
        {
            if (outline(opening) is { } drawn)
            {
                page.Path([Contour(drawn)], null, pen);
            }
        }
    }

    private Contour Contour(Outline outline) => new([.. outline.Points.ToArray().Select(At)], IsClosed: true);
}
