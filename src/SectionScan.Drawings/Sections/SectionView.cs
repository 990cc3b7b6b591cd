using SectionScan.Drawings.Pages;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Sections;

/// <summary>The one mapping from the section frame (y up) to a page (y down).</summary>
/// <param name="Origin">Where the section's origin lies on the page.</param>
/// <param name="Scale">Millimetres on the page for one of the section; 1 is true size.</param>
public sealed record SectionView(PagePoint Origin, double Scale)
{
    /// <summary>The view that has the middle of a box at a place of the page.</summary>
    internal static SectionView Centred(PagePoint middle, OutlineBox box, double scale)
    {
        return new(middle.Moved(-(box.Left + box.Right) / 2 * scale, (box.Top + box.Bottom) / 2 * scale), scale);
    }

    /// <summary>The place on the page.</summary>
    public PagePoint ToPage(SectionPoint point) => Origin.Moved(point.XMm * Scale, -point.YMm * Scale);

    /// <summary>The outline on the page.</summary>
    public Contour ToContour(Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        var points = new PagePoint[outline.Count];
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = ToPage(outline[i]);
        }

        return new(points, IsClosed: true);
    }
}
