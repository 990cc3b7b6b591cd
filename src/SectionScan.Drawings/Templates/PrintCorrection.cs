using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Templates;

/// <summary>What a printer makes of a page: measured over nominal length, across and up, with the paper on its side.</summary>
/// <param name="Across">Across the page, along its longer edge.</param>
/// <param name="Up">Up the page.</param>
public readonly record struct PrintCorrection(double Across, double Up)
{
    /// <summary>A printer that prints true.</summary>
    public static PrintCorrection None => new(1, 1);

    /// <summary>The page in true millimetres that the printer makes of a paper.</summary>
    internal (double WidthMm, double HeightMm) TrueSize(PaperSize paper) => (paper.WidthMm * Across, paper.HeightMm * Up);

    /// <summary>The page to send to the printer, so that what was drawn in true millimetres comes out true.</summary>
    internal Page Apply(Page page)
    {
        var (across, up) = (Across, Up);
        return across == 1 && up == 1 ? page : page with
        {
            WidthMm = page.WidthMm / across,
            HeightMm = page.HeightMm / up,
            Items = [.. page.Items.Select(item => item switch
            {
                TextItem text => text with { Position = Sent(text.Position) },
                PathItem path => path with { Contours = [.. path.Contours.Select(contour => contour with { Points = [.. contour.Points.Select(Sent)] })] },
                _ => item,
            })],
        };

        PagePoint Sent(PagePoint point) => new(point.XMm / across, point.YMm / up);
    }
}
