using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Templates;

/// <summary>A template as it is cut from one piece: lines and lettering at true size.</summary>
/// <param name="Title">What it is, for its caption.</param>
/// <param name="Note">What its edge is, for its caption.</param>
/// <param name="Lines">Its lines.</param>
/// <param name="Texts">Its lettering.</param>
public sealed record TemplatePiece(string Title, string Note, IReadOnlyList<DxfPolyline> Lines, IReadOnlyList<TemplateText> Texts)
{
    /// <summary>The width of the tongue that a plug's slot takes, or that a handle has, mm; null for all else.</summary>
    public double? TongueMm { get; init; }

    /// <summary>Leftmost place of its lines, mm.</summary>
    public double LeftMm => Lines.SelectMany(line => line.Points).Min(p => p.XMm);

    /// <summary>Rightmost place of its lines, mm.</summary>
    public double RightMm => Lines.SelectMany(line => line.Points).Max(p => p.XMm);

    /// <summary>Lowest place of its lines, mm.</summary>
    public double BottomMm => Lines.SelectMany(line => line.Points).Min(p => p.YMm);

    /// <summary>Highest place of its lines, mm.</summary>
    public double TopMm => Lines.SelectMany(line => line.Points).Max(p => p.YMm);

    /// <summary>The piece as DXF lines, lettering as its strokes.</summary>
    public IReadOnlyList<DxfPolyline> ToDxf() =>
    [
        .. Lines,
        .. Texts.SelectMany(text => Strokes(text).Select(stroke => new DxfPolyline(TemplateLayers.Mark, stroke, IsClosed: false))),
    ];

    /// <summary>The strokes of a lettering in the section frame.</summary>
    internal static IEnumerable<IReadOnlyList<SectionPoint>> Strokes(TemplateText text)
    {
        var item = new TextItem(new(text.Middle.XMm, -text.Middle.YMm), text.Text, text.CapHeightMm, Colour.Black) { Anchor = TextAnchor.Middle };
        return StrokeFont.ToPath(item).Contours.Where(contour => contour.Points.Count > 1)
            .Select(contour => (IReadOnlyList<SectionPoint>)[.. contour.Points.Select(p => new SectionPoint(p.XMm, -p.YMm))]);
    }
}
