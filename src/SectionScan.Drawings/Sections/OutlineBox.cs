using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Sections;

/// <summary>The upright box round outlines, mm, section frame.</summary>
internal readonly record struct OutlineBox(double Left, double Bottom, double Right, double Top)
{
    public double Width => Right - Left;

    public double Height => Top - Bottom;

    public static OutlineBox Of(params ReadOnlySpan<Outline> outlines)
    {
        var box = new OutlineBox(double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
        foreach (var outline in outlines)
        {
            foreach (var p in outline.Points)
            {
                box = new(Math.Min(box.Left, p.XMm), Math.Min(box.Bottom, p.YMm), Math.Max(box.Right, p.XMm), Math.Max(box.Top, p.YMm));
            }
        }

        return box;
    }
}
