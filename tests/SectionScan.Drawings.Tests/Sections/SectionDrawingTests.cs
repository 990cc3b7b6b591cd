using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Tests.Sections;

public sealed class SectionDrawingTests
{
    private static readonly SectionCaption Caption = new("Station 3", new(40, 0.03), new(30, 0.02)) { AreaMm2 = new(1200, 2) };

    [Fact]
    public void The_outline_is_drawn_at_true_size_with_the_roof_up()
    {
        // A house: 40 wide, 30 high, its only point at the top is the ridge.
        var house = Outline.From([new(-20, -12), new(20, -12), new(20, 8), new(0, 18), new(-20, 8)]).ValueOrThrow();

        var drawn = Drawn(SectionDrawing.Build(house, Caption), "outline").Points;

        Assert.Equal(40, drawn.Max(p => p.XMm) - drawn.Min(p => p.XMm), 1e-9);
        Assert.Equal(30, drawn.Max(p => p.YMm) - drawn.Min(p => p.YMm), 1e-9);
        Assert.Single(drawn, p => p.YMm <= drawn.Min(q => q.YMm) + 1e-9);
    }

    [Fact]
    public void Width_height_area_and_station_are_written_with_their_uncertainty()
    {
        var texts = SectionDrawing.Build(Ellipse(20, 15), Caption).Items.OfType<TextItem>().Select(item => item.Text).ToArray();

        Assert.Contains("Station 3", texts);
        Assert.Contains("40.00 ± 0.06 mm", texts);
        Assert.Contains("30.00 ± 0.04 mm", texts);
        Assert.Contains("Area 1200.0 ± 4.0 mm²", texts);
    }

    [Theory]
    [InlineData(20, 15)]
    [InlineData(3, 2)]
    [InlineData(60, 4)]
    [InlineData(4, 60)]
    public void Nothing_runs_over_the_edge_of_the_page(double a, double b)
    {
        var caption = Caption with { Notes = ["A rather long note that is much wider than the section itself is"] };

        var page = SectionDrawing.Build(Ellipse(a, b), caption);

        PageChecks.AssertWithin(page);
    }

    [Fact]
    public void Dimension_lines_end_at_the_outlines_extremes()
    {
        var page = SectionDrawing.Build(Ellipse(20, 15), Caption);
        var outline = Drawn(page, "outline").Points;
        var across = page.Items.OfType<PathItem>().First(item => item.Layer == "dimension").Contours[2].Points;

        Assert.Equal(outline.Min(p => p.XMm), across[0].XMm, 1e-9);
        Assert.Equal(outline.Max(p => p.XMm), across[1].XMm, 1e-9);
    }

    private static Contour Drawn(Page page, string layer) => page.Items.OfType<PathItem>().Single(item => item.Layer == layer).Contours.Single();

    private static Outline Ellipse(double a, double b) => Outline.From(Enumerable.Range(0, 360).Select(i =>
    {
        var (sin, cos) = Math.SinCos(double.DegreesToRadians(i));
        return new SectionPoint(a * cos, b * sin);
    })).ValueOrThrow();
}
