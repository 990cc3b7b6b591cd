namespace SectionScan.Drawings.Pages;

/// <summary>A photograph set into a page.</summary>
/// <param name="LeftMm">Its left edge, mm.</param>
/// <param name="TopMm">Its top edge, mm.</param>
/// <param name="WidthMm">Its width on the page, mm.</param>
/// <param name="HeightMm">Its height on the page, mm.</param>
/// <param name="Jpeg">A JPEG file's bytes.</param>
/// <param name="Description">What it shows, for those who do not see it.</param>
public sealed record PictureItem(
    double LeftMm, double TopMm, double WidthMm, double HeightMm, ReadOnlyMemory<byte> Jpeg, string Description) : PageItem
{
    /// <inheritdoc/>
    public override PageItem Placed(PagePoint origin, double scale)
    {
        var corner = new PagePoint(LeftMm, TopMm).Placed(origin, scale);
        return this with { LeftMm = corner.XMm, TopMm = corner.YMm, WidthMm = WidthMm * scale, HeightMm = HeightMm * scale };
    }
}
