using System.Globalization;
using NetTopologySuite.Geometries;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Templates;

/// <summary>The handle of a plug: a strip that stands square on the plate, its tongue through a slot in the plate's middle, its shoulders on
/// the plate. The play between tongue and slot is common practice, no source.</summary>
internal static class PlugHandle
{
    private const double PlayMm = 0.1;
    private const double ShoulderMm = 3;
    private const double LengthMm = 90;
    private const double EndRadiusMm = 4;
    private const double HangingHoleRadiusMm = 2.5;

    /// <summary>The least metal round the slot, mm.</summary>
    private const double LeastRoundMm = 3.5;

    private static readonly double[] Tongues = [12, 10, 8, 6, 4];

    /// <summary>The widest tongue whose slot leaves enough metal round it, mm; null when the plug is too small for any.</summary>
    public static double? TongueFor(Geometry plug, double sheetMm) =>
        Tongues.Cast<double?>().FirstOrDefault(tongue => plug.Contains(Slot(tongue!.Value, sheetMm).Buffer(LeastRoundMm)));

    /// <summary>The slot, level, in the middle of the section.</summary>
    public static Polygon Slot(double tongueMm, double sheetMm)
    {
        var (x, y) = ((tongueMm / 2) + PlayMm, (sheetMm / 2) + (PlayMm / 2));
        return TemplateLettering.Box(-x, -y, x, y);
    }

    /// <summary>The slot's cut line: the whole width of the cut is taken from the waste within.</summary>
    public static DxfPolyline SlotLine(double tongueMm, double sheetMm, double cutWidthMm)
    {
        var slot = Slot(tongueMm, sheetMm).EnvelopeInternal;
        var (x, y) = (slot.MaxX - (cutWidthMm / 2), Math.Max(0.05, slot.MaxY - (cutWidthMm / 2)));
        return new(TemplateLayers.Hole, [new(-x, -y), new(x, -y), new(x, y), new(-x, y)], IsClosed: true);
    }

    /// <summary>The handle as a piece to cut.</summary>
    /// <param name="tongueMm">The tongue's width.</param>
    /// <param name="sheetMm">The sheet's thickness: the tongue is as long.</param>
    /// <param name="cutWidthMm">The width of the kerf or of the printed line.</param>
    /// <param name="unit">The unit of lengths in its caption.</param>
    public static TemplatePiece Piece(double tongueMm, double sheetMm, double cutWidthMm, LengthUnit unit)
    {
        var half = (tongueMm / 2) + ShoulderMm;
        var strip = TemplateLettering.Box(-half + EndRadiusMm, -EndRadiusMm, half - EndRadiusMm, LengthMm - EndRadiusMm).Buffer(EndRadiusMm, 16)
            .Intersection(TemplateLettering.Box(-half, 0, half, LengthMm));
        var shape = strip.Union(TemplateLettering.Box(-tongueMm / 2, -sheetMm, tongueMm / 2, 1));
        var border = Outline.From(((Polygon)shape).ExteriorRing.Coordinates.Select(c => new SectionPoint(c.X, c.Y)))
            .Then(outline => OutlineOffset.By(outline, cutWidthMm / 2)).ValueOrThrow();
        var hole = new SectionPoint(0, LengthMm - 7);
        var metal = shape.Difference(new Point(hole.XMm, hole.YMm).Buffer(HangingHoleRadiusMm + 1));
        var text = TemplateLettering.Fitted(metal, "handle", LengthMm / 2, 0, 2);
        return new(
            string.Create(CultureInfo.InvariantCulture, $"handle for plugs, tongue {MeasureText.Length(new(tongueMm, 0), unit)}"),
            $"for sheet of {MeasureText.Length(new(sheetMm, 0), unit)}; stands square on the printed face",
            [
                new(TemplateLayers.Handle, border.Points.ToArray(), IsClosed: true),
                TemplateDrawing.Hole(hole, HangingHoleRadiusMm - (cutWidthMm / 2)),
            ],
            text is null ? [] : [text]);
    }
}
