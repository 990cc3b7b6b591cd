using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Sections;

/// <summary>The pens and sizes that all section drawings share: one wide line for the thing itself, thin lines for all else.</summary>
internal static class Ink
{
    public const double TitleHeightMm = 3.5;
    public const double TextHeightMm = 2.5;
    public const double SmallHeightMm = 2;

    public static readonly Colour Line = Colour.Grey(26);
    public static readonly Colour Text = Colour.Grey(38);
    public static readonly Colour Faint = Colour.Grey(120);

    public static readonly Pen Outline = new(Line, 0.35) { IsRound = true };
    public static readonly Pen Thin = new(Line, 0.18);
    public static readonly Pen Centre = new(Faint, 0.13) { DashesMm = [6, 1.2, 0.6, 1.2] };
}
