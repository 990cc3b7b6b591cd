using System.Globalization;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using SectionScan.Drawings.Comparisons;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Walls;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Porting.Cutting;

namespace SectionScan.Drawings.Cutting;

/// <summary>The figure of a cut at a true scale: the metal to remove now and at finish, where nothing may be removed, keep-outs, and the
/// greatest depth of each side.</summary>
internal static class CutFigure
{
    /// <summary>Room for the depths beside the target, mm.</summary>
    public const double LabelRoomMm = 22;

    /// <summary>Room for the depths above and below, mm.</summary>
    public const double LabelHeightMm = 13;

    // A keep-out behind a thicker wall than this is none to mind, and of a long one only what lies this near the port is shown, mm.
    private const double NearMm = 15;
    private const double FarthestMm = 20;

    private static readonly double[] Scales = [0.5, 1, 1.5, 2, 2.5, 3, 4, 5];

    public static readonly Colour NowFill = DivergingPalette.At(0.75);
    public static readonly Colour FinishFill = DivergingPalette.At(0.25);
    public static readonly Colour BeyondFill = DivergingPalette.At(-0.55);
    public static readonly Pen TargetPen = new(Ink.Line, 0.4) { IsRound = true };
    public static readonly Pen PresentPen = new(Colour.Grey(90), 0.25) { IsRound = true, DashesMm = [1.8, 1.1] };
    public static readonly Pen LeavePen = new(DivergingPalette.At(-1), 0.9) { IsRound = true };
    public static readonly Pen ThinPen = new(Ink.Line, 1.1) { DashesMm = [0.7, 0.7] };

    /// <summary>The largest usual scale at which a cut, its depths and the keep-outs near it fit a room.</summary>
    public static double ScaleFor(StationCut cut, double widthMm, double heightMm) => Scales.Last(s => s == Scales[0]
        || (Shown(cut, s) is var box && box.Width * s <= widthMm && box.Height * s <= heightMm));

    /// <summary>What is to be shown whole: the outlines with room for the depths, and every keep-out that is near with its limit.</summary>
    private static OutlineBox Shown(StationCut cut, double scale)
    {
        var outlines = OutlineBox.Of(cut.Target, cut.Present);
        return cut.Walls.Where(wall => wall.WallMm.Value <= NearMm).Select(wall => KeepOutFigure.Box(wall.KeepOut).Within(outlines.Widened(FarthestMm, FarthestMm)))
            .Aggregate(outlines.Widened(LabelRoomMm / scale, LabelHeightMm / scale), (box, keepOut) => box.With(keepOut));
    }

    /// <summary>Draws the figure in the middle of a room on the page.</summary>
    public static void Draw(PageBuilder page, StationCut cut, PagePoint middle, double scale, double halfWidthMm, double halfHeightMm, LengthUnit unit)
    {
        var box = OutlineBox.Of(cut.Target, cut.Present);
        var view = SectionView.Centred(middle, Shown(cut, scale), scale);
        Area(page, "finish", view, Difference(cut.Target, cut.Present), FinishFill);
        Area(page, "now", view, cut.MetalNow, NowFill);
        Area(page, "beyond", view, Difference(cut.Present, cut.Target), BeyondFill);
        KeepOutFigure.Draw(page, cut.Walls.Select(wall => wall.KeepOut), view, middle, halfWidthMm, halfHeightMm);
        page.Layer = "centre";
        page.Lines(
            [
                (view.ToPage(new(box.Left + 2, 0)), view.ToPage(new(box.Right - 2, 0))),
                (view.ToPage(new(0, box.Bottom + 2)), view.ToPage(new(0, box.Top - 2))),
            ],
            Ink.Centre);
        page.Layer = "present";
        page.Path([view.ToContour(cut.Present)], null, PresentPen);
        page.Layer = "target";
        page.Path([view.ToContour(cut.Target)], null, TargetPen);
        Stretches(page, "leave", cut, view, place => place.Mark is CutMark.Leave or CutMark.Beyond, LeavePen);
        Stretches(page, "thin-wall", cut, view, place => place.Mark == CutMark.ThinWall, ThinPen);
        Depths(page, cut, view, unit);
    }

    private static void Stretches(PageBuilder page, string layer, StationCut cut, SectionView view, Func<CutPlace, bool> isOf, Pen pen)
    {
        page.Layer = layer;
        var places = cut.Places;
        var start = Enumerable.Range(0, places.Count).FirstOrDefault(i => !isOf(places[i]), -1);
        if (start < 0)
        {
            page.Path([new([.. places.Select(place => view.ToPage(place.Target))], IsClosed: true)], null, pen);
            return;
        }

        var run = new List<PagePoint>();
        for (var k = 1; k <= places.Count; k++)
        {
            var place = places[(start + k) % places.Count];
            if (isOf(place))
            {
                run.Add(view.ToPage(place.Target));
                continue;
            }

            if (run.Count > 1)
            {
                page.Polyline([.. run], pen);
            }

            run.Clear();
        }
    }

    /// <summary>"now / at finish" at the place of each side where most is to be removed.</summary>
    private static void Depths(PageBuilder page, StationCut cut, SectionView view, LengthUnit unit)
    {
        const double LeaderMm = 5;
        page.Layer = "depth";
        foreach (var side in cut.Places.GroupBy(place => place.Region))
        {
            // Leaders stand in the middle of the sides, so that no two depths lie over each other.
            var deepest = side.MaxBy(place => place.AtFinishMm)!;
            var middle = side.MinBy(place => FromMiddleDeg(place))!;
            var (x, y) = (middle.NormalX, -middle.NormalY);
            var foot = view.ToPage(middle.Target);
            var end = foot.Moved(LeaderMm * x, LeaderMm * y);
            page.Line(foot.Moved(0.5 * x, 0.5 * y), end, Ink.Thin);
            var anchor = x > 0.35 ? TextAnchor.Start : x < -0.35 ? TextAnchor.End : TextAnchor.Middle;
            var text = new PagePoint(end.XMm + (1.2 * x), end.YMm + (2.6 * y) + (Ink.SmallHeightMm / 2));
            var words = Depth(deepest, unit);
            var wide = StrokeFont.WidthMm(words, Ink.SmallHeightMm);
            var left = anchor == TextAnchor.Start ? 0 : anchor == TextAnchor.End ? wide : wide / 2;
            page.Rectangle(text.XMm - left - 0.6, text.YMm - Ink.SmallHeightMm - 0.6, wide + 1.2, Ink.SmallHeightMm + 1.2, Colour.White, null);
            page.Text(text, words, Ink.SmallHeightMm, Ink.Text, anchor, isBold: true);
        }
    }

    private static double FromMiddleDeg(CutPlace place) => Math.Abs(Math.IEEERemainder(place.Direction.Degrees - ((int)place.Region * 45), 360));

    private static string Depth(CutPlace place, LengthUnit unit) => place.Mark switch
    {
        CutMark.Leave or CutMark.Beyond => "0",
        CutMark.ThinWall => "wall",
        _ => $"{Number(place.NowMm, unit)} / {Number(place.AtFinishMm, unit)}",
    };

    private static string Number(double lengthMm, LengthUnit unit) => unit == LengthUnit.Inch
        ? (lengthMm / 25.4).ToString("0.000", CultureInfo.InvariantCulture) : lengthMm.ToString("0.0", CultureInfo.InvariantCulture);

    private static void Area(PageBuilder page, string layer, SectionView view, Geometry area, Colour fill)
    {
        page.Layer = layer;
        for (var i = 0; i < area.NumGeometries; i++)
        {
            if (area.GetGeometryN(i) is Polygon { IsEmpty: false } polygon)
            {
                page.Path([Ring(polygon.ExteriorRing), .. polygon.InteriorRings.Select(Ring)], fill, null);
            }
        }

        Contour Ring(LineString ring) => new([.. ring.Coordinates.Skip(1).Select(c => view.ToPage(new SectionPoint(c.X, c.Y)))], IsClosed: true);
    }

    private static Geometry Difference(Outline within, Outline notWithin) =>
        OverlayNGRobust.Overlay(within.ToPolygon(), notWithin.ToPolygon(), SpatialFunction.Difference);
}
