using System.Globalization;
using NetTopologySuite.Geometries;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Templates;

namespace SectionScan.Drawings.Templates;

/// <summary>Turns the shape of a template into a piece to cut: edge, handle, marks.</summary>
public static class TemplateDrawing
{
    private const double PlateMarginMm = 14;
    private const double PlateCornerMm = 4;
    private const double HandleWidthMm = 26;
    private const double HandleLengthMm = 22;
    private const double HangingHoleRadiusMm = 2.5;
    private const double PlugTextMm = 2;

    /// <summary>The least metal round the hole for the stem, mm; with less, the plug has no hole.</summary>
    private const double LeastRoundStemMm = 4;

    /// <summary>Draws a template.</summary>
    /// <param name="template">Its shape.</param>
    /// <param name="cutWidthMm">The width of the kerf or of the printed line, all of which is taken from the waste, mm.</param>
    /// <param name="hold">How a plug is held; a plug too small for it has neither slot nor hole.</param>
    /// <param name="unit">The unit of lengths in its caption.</param>
    /// <returns>The piece, or <c>offset-closes</c>.</returns>
    public static Result<TemplatePiece> Build(SectionTemplate template, double cutWidthMm, PlugHold hold, LengthUnit unit = LengthUnit.Millimetre)
    {
        ArgumentNullException.ThrowIfNull(template);
        ArgumentNullException.ThrowIfNull(hold);
        return template.CutPath(cutWidthMm).Then<TemplatePiece>(path =>
            template.Kind == TemplateKind.Inside ? Plug(template, path, cutWidthMm, hold, unit) : Plate(template, path, cutWidthMm, unit));
    }

    /// <summary>The handles that plugs need: one for each width of tongue.</summary>
    /// <param name="pieces">Templates made with the same hold.</param>
    /// <param name="cutWidthMm">The width of the kerf or of the printed line, mm.</param>
    /// <param name="hold">How plugs are held.</param>
    /// <param name="unit">The unit of lengths in captions.</param>
    public static IReadOnlyList<TemplatePiece> Handles(IEnumerable<TemplatePiece> pieces, double cutWidthMm, PlugHold hold, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(hold);
        return [.. pieces.Select(piece => piece.TongueMm).OfType<double>().Distinct().OrderDescending()
            .Select(tongue => PlugHandle.Piece(tongue, hold.SheetMm, cutWidthMm, unit) with { TongueMm = tongue })];
    }

    private static TemplatePiece Plug(SectionTemplate template, Outline path, double cutWidthMm, PlugHold hold, LengthUnit unit)
    {
        var edge = template.Edge.ToPolygon();
        var lines = new List<DxfPolyline> { Closed(TemplateLayers.Plug, path) };
        Geometry metal = edge;
        double? tongue = null;
        if (hold.StemMm > cutWidthMm && edge.Contains(new Point(0, 0).Buffer((hold.StemMm / 2) + LeastRoundStemMm)))
        {
            lines.Add(Hole(new(0, 0), (hold.StemMm - cutWidthMm) / 2));
            metal = edge.Difference(new Point(0, 0).Buffer((hold.StemMm / 2) + 0.3));
        }
        else if (hold.SheetMm > 0 && PlugHandle.TongueFor(edge, hold.SheetMm) is { } width)
        {
            tongue = width;
            lines.Add(PlugHandle.SlotLine(width, hold.SheetMm, cutWidthMm));
            metal = edge.Difference(PlugHandle.Slot(width, hold.SheetMm).Buffer(0.3));
        }

        var box = edge.EnvelopeInternal;
        var texts = Present(
            TemplateLettering.Fitted(edge, "↑ roof", 0.63 * box.MaxY, mostCapHeightMm: PlugTextMm),
            template.PortName.Length > 0 ? TemplateLettering.Fitted(edge, template.PortName, 0.36 * box.MaxY, mostCapHeightMm: PlugTextMm) : null,
            TemplateLettering.Fitted(edge, $"{StationWords(template)}{StageWord(template)}", 0.36 * box.MinY, mostCapHeightMm: PlugTextMm),
            TemplateLettering.Fitted(edge, "upstream face", 0.63 * box.MinY, mostCapHeightMm: 1.6));
        return Piece(template, lines, metal, texts, unit) with { TongueMm = tongue };
    }

    private static TemplatePiece Plate(SectionTemplate template, Outline path, double cutWidthMm, LengthUnit unit)
    {
        var edge = template.Edge.ToPolygon();
        var box = edge.EnvelopeInternal;
        var (left, right, bottom, top) =
            (box.MinX - PlateMarginMm, box.MaxX + PlateMarginMm, box.MinY - PlateMarginMm, box.MaxY + PlateMarginMm);
        var middle = (left + right) / 2;
        var plate = Rounded(left, bottom, right, top)
            .Union(Rounded(middle - (HandleWidthMm / 2), bottom - HandleLengthMm, middle + (HandleWidthMm / 2), bottom + (2 * PlateCornerMm)));
        var hanging = new SectionPoint(middle, bottom - HandleLengthMm + 7.5);
        var border = Outline.From(((Polygon)plate).ExteriorRing.Coordinates.Select(c => new SectionPoint(c.X, c.Y)))
            .Then(shape => OutlineOffset.By(shape, cutWidthMm / 2)).ValueOrThrow();
        var lines = new List<DxfPolyline>
        {
            Closed(TemplateLayers.CutOut, path),
            Closed(TemplateLayers.Plate, border),
            Hole(hanging, HangingHoleRadiusMm - (cutWidthMm / 2)),
        };
        var metal = plate.Difference(edge).Difference(new Point(hanging.XMm, hanging.YMm).Buffer(HangingHoleRadiusMm));
        var texts = Present(
            TemplateLettering.Fitted(metal, "↑ roof", box.MaxY + 6, middle),
            TemplateLettering.Fitted(metal, "left", 3, left + (PlateMarginMm / 2), 2),
            TemplateLettering.Fitted(metal, "right", 3, right - (PlateMarginMm / 2), 2),
            TemplateLettering.Fitted(metal, template.PortName, box.MinY - 5, middle),
            TemplateLettering.Fitted(metal, $"{StationWords(template)}{StageWord(template)}", box.MinY - 10, middle),
            TemplateLettering.Fitted(metal, "upstream face", bottom - 5, middle, 1.8));
        return Piece(template, lines, metal, texts, unit);
    }

    private static TemplatePiece Piece(
        SectionTemplate template, List<DxfPolyline> lines, Geometry metal, IReadOnlyList<TemplateText> texts, LengthUnit unit)
    {
        lines.AddRange(TemplateLettering.CentreLines(metal, texts));
        var name = template.PortName.Length > 0 ? $"{template.PortName}, " : string.Empty;
        var kind = template.Kind == TemplateKind.Inside ? "inside plug" : "outside plate";
        var box = OutlineBox.Of(template.Edge);
        var edge = template.Stage == TemplateStage.Rough
            ? $"target less {MeasureText.Length(new(template.AllowanceMm, 0), unit)} for finishing" : "edge on the target";
        var clearance = template.ClearanceMm > 0 ? $", clearance {MeasureText.Length(new(template.ClearanceMm, 0), unit)}" : string.Empty;
        var size = $"{MeasureText.Length(new(box.Width, 0), unit)} × {MeasureText.Length(new(box.Height, 0), unit)}";
        return new($"{name}{StationWords(template)}{kind}, {StageWord(template)}", $"{edge}{clearance}; {size}", lines, texts);
    }

    private static TemplateText[] Present(params TemplateText?[] texts) => [.. texts.OfType<TemplateText>().Where(text => text.Text.Length > 0)];

    private static string StationWords(SectionTemplate template) => template.Station is { } station
        ? string.Create(CultureInfo.InvariantCulture, $"station {station}, ")
        : template.PortName.Length == 0 ? $"{template.SectionName}, " : string.Empty;

    private static string StageWord(SectionTemplate template) => template.Stage == TemplateStage.Rough ? "rough" : "finish";

    private static DxfPolyline Closed(string layer, Outline outline) => new(layer, outline.Points.ToArray(), IsClosed: true);

    internal static DxfPolyline Hole(SectionPoint centre, double radiusMm)
    {
        const int Corners = 180;
        return new(
            TemplateLayers.Hole,
            [
                .. Enumerable.Range(0, Corners).Select(i => Math.SinCos(2 * Math.PI * i / Corners))
                    .Select(at => new SectionPoint(centre.XMm + (radiusMm * at.Cos), centre.YMm + (radiusMm * at.Sin))),
            ],
            IsClosed: true);
    }

    private static Geometry Rounded(double left, double bottom, double right, double top) =>
        TemplateLettering.Box(left + PlateCornerMm, bottom + PlateCornerMm, right - PlateCornerMm, top - PlateCornerMm).Buffer(PlateCornerMm, 16);
}
