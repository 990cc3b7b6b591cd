using System.Globalization;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Drawings.Targets;

/// <summary>A line of known length between two fine end lines, to be read with a caliper. Its length counts from the middle of one
/// end line to the middle of the other, so that ink that spreads changes nothing.</summary>
internal static class CheckBar
{
    /// <summary>Half the length of an end line, mm: how far a bar reaches to either side.</summary>
    public const double HalfTickMm = 1;

    private const double TextHeightMm = 1.8;
    private static readonly Pen TickPen = new(Colour.Black, 0.2);
    private static readonly Pen LinePen = new(Colour.Black, 0.13);

    /// <summary>Draws a bar to the right from <paramref name="start"/>.</summary>
    public static void Across(PageBuilder page, PagePoint start, double lengthMm)
        => Draw(page, lengthMm, along => start.Moved(along, 0), (along, side) => start.Moved(along, side), default);

    /// <summary>Draws a bar upward from <paramref name="start"/>.</summary>
    public static void Up(PageBuilder page, PagePoint start, double lengthMm)
        => Draw(page, lengthMm, along => start.Moved(0, -along), (along, side) => start.Moved(side, -along), Angle.FromDegrees(90));

    private static void Draw(
        PageBuilder page,
        double lengthMm,
        Func<double, PagePoint> onLine,
        Func<double, double, PagePoint> beside,
        Angle turn)
    {
        page.Layer = "check-bar";
        var label = string.Create(CultureInfo.InvariantCulture, $"{lengthMm:0} mm");
        var halfGap = (StrokeFont.WidthMm(label, TextHeightMm) / 2) + TextHeightMm;
        var middle = lengthMm / 2;
        page.Lines([(onLine(0), onLine(middle - halfGap)), (onLine(middle + halfGap), onLine(lengthMm))], LinePen);
        page.Lines(new[] { 0, lengthMm }.Select(at => (beside(at, -HalfTickMm), beside(at, HalfTickMm))), TickPen);
        page.Text(beside(middle, TextHeightMm / 2), label, TextHeightMm, Colour.Black, TextAnchor.Middle, turn);
    }
}
