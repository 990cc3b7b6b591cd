using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Sections;

/// <summary>The upright box round outlines, mm, section frame.</summary>
internal readonly record struct OutlineBox(double Left, double Bottom, double Right, double Top)
{
    public double Width => Right - Left;

    public double Height => Top - Bottom;

    /// <summary>The box with room added left and right, below and above.</summary>
    public OutlineBox Widened(double acrossMm, double upMm) => new(Left - acrossMm, Bottom - upMm, Right + acrossMm, Top + upMm);

    /// <summary>The box round both.</summary>
    public OutlineBox With(OutlineBox other) =>
        new(Math.Min(Left, other.Left), Math.Min(Bottom, other.Bottom), Math.Max(Right, other.Right), Math.Max(Top, other.Top));

    /// <summary>What lies in both.</summary>
    public OutlineBox Within(OutlineBox other) =>
        new(Math.Max(Left, other.Left), Math.Max(Bottom, other.Bottom), Math.Min(Right, other.Right), Math.Min(Top, other.Top));

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
