namespace SectionScan.Drawings.Pages;

/// <summary>Sets a finished page into another, moved and scaled as a whole.</summary>
internal static class PageFit
{
    /// <summary>The items of a page at another size and place.</summary>
    /// <param name="page">The page.</param>
    /// <param name="leftMm">Where its left edge goes.</param>
    /// <param name="topMm">Where its top edge goes.</param>
    /// <param name="scale">Its size there over its own.</param>
    public static IEnumerable<PageItem> Items(Page page, double leftMm, double topMm, double scale)
    {
        return page.Items.Select(item => item switch
        {
            PathItem path => new PathItem([.. path.Contours.Select(c => new Contour([.. c.Points.Select(Moved)], c.IsClosed))], path.Fill, Scaled(path.Stroke)) { Layer = path.Layer },
            TextItem text => text with { Position = Moved(text.Position), CapHeightMm = text.CapHeightMm * scale },
            PictureItem picture => picture with
            {
                LeftMm = leftMm + (picture.LeftMm * scale),
                TopMm = topMm + (picture.TopMm * scale),
                WidthMm = picture.WidthMm * scale,
                HeightMm = picture.HeightMm * scale,
            },
            _ => item,
        });

        PagePoint Moved(PagePoint p) => new(leftMm + (p.XMm * scale), topMm + (p.YMm * scale));

        Pen? Scaled(Pen? pen) => pen is null ? null : pen with { WidthMm = pen.WidthMm * scale, DashesMm = [.. pen.DashesMm.Select(dash => dash * scale)] };
    }
}
