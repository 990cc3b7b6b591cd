using NetTopologySuite.Geometries;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Outlines;
using SectionScan.Porting.Walls;

namespace SectionScan.Drawings.Walls;

/// <summary>Keep-outs in a figure: their borders, and the lines at which a wall has its limit.</summary>
internal static class KeepOutFigure
{
    public static readonly Pen BorderPen = new(Ink.Line, 0.3);
    public static readonly Pen LimitPen = new(Ink.Faint, 0.18) { DashesMm = [1, 1] };

    private const double LeastRadiusMm = 0.5; // of the mark for a single place, on paper

    /// <summary>Draws keep-outs, cut off at the border of the figure's room.</summary>
    /// <param name="page">The page.</param>
    /// <param name="keepOuts">The keep-outs.</param>
    /// <param name="view">Where the section lies on the page.</param>
    /// <param name="middle">The middle of the room.</param>
    /// <param name="halfWidthMm">Half its width on paper.</param>
    /// <param name="halfHeightMm">Half its height on paper.</param>
    public static void Draw(
        PageBuilder page, IEnumerable<KeepOut> keepOuts, SectionView view, PagePoint middle, double halfWidthMm, double halfHeightMm)
    {
        page.Layer = "keep-out";
        foreach (var (contour, pen) in keepOuts.SelectMany(keepOut => Lines(keepOut, view)))
        {
            List<Contour> clipped = [.. LineClip.Within(
                contour, middle.XMm - halfWidthMm, middle.YMm - halfHeightMm, middle.XMm + halfWidthMm, middle.YMm + halfHeightMm)];
            if (clipped.Count > 0)
            {
                page.Path(clipped, null, pen);
            }
        }
    }

    /// <summary>The box round a keep-out and the line at which the wall to it has its limit, mm, section frame.</summary>
    public static OutlineBox Box(KeepOut keepOut)
    {
        var (box, roundMm) = keepOut.Shape switch
        {
            KeepOutCircle circle => (new OutlineBox(circle.Centre.XMm, circle.Centre.YMm, circle.Centre.XMm, circle.Centre.YMm), circle.RadiusMm + keepOut.LimitMm),
            KeepOutLine line => (new OutlineBox(line.Points.Min(p => p.XMm), line.Points.Min(p => p.YMm), line.Points.Max(p => p.XMm), line.Points.Max(p => p.YMm)), keepOut.LimitMm),
            KeepOutOutline outline => (OutlineBox.Of(outline.Outline), keepOut.LimitMm),
            _ => throw new ArgumentException($"No box round a {keepOut.Shape.GetType().Name}.", nameof(keepOut)),
        };
        return box.Widened(roundMm, roundMm);
    }

    private static IEnumerable<(Contour Contour, Pen Pen)> Lines(KeepOut keepOut, SectionView view)
    {
        switch (keepOut.Shape)
        {
            case KeepOutCircle circle:
                var centre = view.ToPage(circle.Centre);
                yield return (Contour.Circle(centre, Math.Max(circle.RadiusMm * view.Scale, LeastRadiusMm)), BorderPen);
                yield return (Contour.Circle(centre, (circle.RadiusMm + keepOut.LimitMm) * view.Scale), LimitPen);
                break;
            case KeepOutLine line:
                yield return (new([.. line.Points.Select(view.ToPage)], IsClosed: false), BorderPen);
                var path = new LineString([.. line.Points.Select(p => new Coordinate(p.XMm, p.YMm))]);
                if (path.Buffer(keepOut.LimitMm) is Polygon { IsEmpty: false } near)
                {
                    yield return (new([.. near.ExteriorRing.Coordinates.Skip(1).Select(c => view.ToPage(new(c.X, c.Y)))], IsClosed: true), LimitPen);
                }

                break;
            case KeepOutOutline outline:
                yield return (view.ToContour(outline.Outline), BorderPen);
                if (OutlineOffset.By(outline.Outline, keepOut.LimitMm).TryGet(out var limit, out _))
                {
                    yield return (view.ToContour(limit), LimitPen);
                }

                break;
        }
    }
}
