using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Tests;

internal static class PageChecks
{
    /// <summary>Every point of every item lies on the page.</summary>
    public static void AssertWithin(Page page)
    {
        foreach (var item in page.Items)
        {
            var path = item as PathItem ?? StrokeFont.ToPath((TextItem)item);
            foreach (var point in path.Contours.SelectMany(contour => contour.Points))
            {
                Assert.InRange(point.XMm, 0, page.WidthMm);
                Assert.InRange(point.YMm, 0, page.HeightMm);
            }
        }
    }
}
