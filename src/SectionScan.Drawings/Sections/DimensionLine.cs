using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Drawings.Sections;

/// <summary>A dimension line with arrows and its text, as on an engineering drawing: text above a line across, left of a line up,
/// or beyond the line's end where the line is too short.</summary>
internal static class DimensionLine
{
    private const double ArrowLengthMm = 2.2;
    private const double ArrowHalfWidthMm = 0.42;
    private const double TextGapMm = 0.9;
    private const double OvershootMm = 1.2;
    private const double OutsideGapMm = 2.4;
    private const double ExtensionGapMm = 1;

    /// <summary>Across, at a height on the page, between two points that are joined to it by extension lines.</summary>
    public static void Across(PageBuilder page, PagePoint left, PagePoint right, double yMm, string text)
    {
        page.Lines(
            [
                (new(left.XMm, left.YMm + ExtensionGapMm), new(left.XMm, yMm + OvershootMm)),
                (new(right.XMm, right.YMm + ExtensionGapMm), new(right.XMm, yMm + OvershootMm)),
                (new(left.XMm, yMm), new(right.XMm, yMm)),
            ],
            Ink.Thin);
        Arrow(page, new(left.XMm, yMm), -1, 0);
        Arrow(page, new(right.XMm, yMm), 1, 0);
        if (Fits(text, right.XMm - left.XMm))
        {
            page.Text(new((left.XMm + right.XMm) / 2, yMm - TextGapMm), text, Ink.TextHeightMm, Ink.Text, TextAnchor.Middle);
        }
        else
        {
            page.Text(new(right.XMm + OutsideGapMm, yMm + (Ink.TextHeightMm / 2)), text, Ink.TextHeightMm, Ink.Text);
        }
    }

    /// <summary>Upward, at a place across the page, between two points that are joined to it by extension lines.</summary>
    public static void Up(PageBuilder page, PagePoint bottom, PagePoint top, double xMm, string text)
    {
        page.Lines(
            [
                (new(bottom.XMm + ExtensionGapMm, bottom.YMm), new(xMm + OvershootMm, bottom.YMm)),
                (new(top.XMm + ExtensionGapMm, top.YMm), new(xMm + OvershootMm, top.YMm)),
                (new(xMm, bottom.YMm), new(xMm, top.YMm)),
            ],
            Ink.Thin);
        Arrow(page, new(xMm, bottom.YMm), 0, 1);
        Arrow(page, new(xMm, top.YMm), 0, -1);
        var turn = Angle.FromDegrees(90);
        if (Fits(text, bottom.YMm - top.YMm))
        {
            var middle = new PagePoint(xMm - TextGapMm, (bottom.YMm + top.YMm) / 2);
            page.Text(middle, text, Ink.TextHeightMm, Ink.Text, TextAnchor.Middle, turn);
        }
        else
        {
            page.Text(new(xMm + (Ink.TextHeightMm / 2), top.YMm - OutsideGapMm), text, Ink.TextHeightMm, Ink.Text, turn: turn);
        }
    }

    /// <summary>A bar of known length with its label, drawn at a scale.</summary>
    public static void ScaleBar(PageBuilder page, PagePoint start, double lengthMm, double scale, string label)
    {
        const double TickMm = 0.8;
        var end = start.Moved(lengthMm * scale, 0);
        page.Lines(
            [
                (start, end),
                (start.Moved(0, -TickMm), start.Moved(0, TickMm)),
                (end.Moved(0, -TickMm), end.Moved(0, TickMm)),
            ],
            Ink.Thin);
        page.Text(end.Moved(2, Ink.SmallHeightMm / 2), label, Ink.SmallHeightMm, Ink.Text);
    }

    /// <summary>How far a text reaches beyond the end of a line that is too short for it; zero when it fits.</summary>
    public static double RunsOverMm(string text, double spanMm)
        => Fits(text, spanMm) ? 0 : OutsideGapMm + StrokeFont.WidthMm(text, Ink.TextHeightMm);

    private static bool Fits(string text, double spanMm) => StrokeFont.WidthMm(text, Ink.TextHeightMm) + 2 <= spanMm;

    private static void Arrow(PageBuilder page, PagePoint tip, double directionX, double directionY)
    {
        var tail = tip.Moved(-ArrowLengthMm * directionX, -ArrowLengthMm * directionY);
        page.Path(
            [
                new(
                    [
                        tip,
                        tail.Moved(-ArrowHalfWidthMm * directionY, ArrowHalfWidthMm * directionX),
                        tail.Moved(ArrowHalfWidthMm * directionY, -ArrowHalfWidthMm * directionX),
                    ],
                    IsClosed: true),
            ],
            Ink.Line,
            null);
    }
}
