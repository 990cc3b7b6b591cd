namespace SectionScan.Drawings.Pages;

/// <summary>Lines and areas. An area is what an odd number of contours enclose, so a contour within another is a hole.</summary>
/// <param name="Contours">One contour or more.</param>
/// <param name="Fill">The colour of the area, or null for lines only.</param>
/// <param name="Stroke">The pen of the lines, or null for an area only.</param>
public sealed record PathItem(IReadOnlyList<Contour> Contours, Colour? Fill, Pen? Stroke) : PageItem
{
    /// <inheritdoc/>
    public override PageItem Placed(PagePoint origin, double scale) => this with
    {
        Contours = [.. Contours.Select(contour => contour with { Points = [.. contour.Points.Select(point => point.Placed(origin, scale))] })],
        Stroke = Stroke is null ? null : Stroke with { WidthMm = Stroke.WidthMm * scale, DashesMm = [.. Stroke.DashesMm.Select(dash => dash * scale)] },
    };
}
