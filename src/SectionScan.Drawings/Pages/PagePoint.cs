namespace SectionScan.Drawings.Pages;

/// <summary>A place on a drawn page. Unit: mm. Origin at the page's top-left corner, x to the right, y <em>down</em>.</summary>
/// <param name="XMm">Millimetres to the right of the left edge.</param>
/// <param name="YMm">Millimetres below the top edge.</param>
public readonly record struct PagePoint(double XMm, double YMm)
{
    /// <summary>The place on a larger page on which this one begins at <paramref name="origin"/>, drawn so many times its size.</summary>
    public PagePoint Placed(PagePoint origin, double scale) => new(origin.XMm + (XMm * scale), origin.YMm + (YMm * scale));

    /// <summary>The place moved by (<paramref name="xMm"/>, <paramref name="yMm"/>).</summary>
    public PagePoint Moved(double xMm, double yMm) => new(XMm + xMm, YMm + yMm);
}
