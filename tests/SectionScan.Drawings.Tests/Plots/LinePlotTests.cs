using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Plots;

namespace SectionScan.Drawings.Tests.Plots;

public sealed class LinePlotTests
{
    private static readonly PlotFrame Frame = new("Area along the port", "Distance, mm", "Area, mm²") { Bands = [new("usual", 950, 1000)], Places = [(0, "1"), (40, "2")] };

    [Fact]
    public void Equal_steps_of_value_are_equal_steps_on_paper()
    {
        var page = LinePlot.Build(Frame, [new("a", [new(0, 900), new(20, 1000), new(40, 1100)], [])]);

        var line = page.Items.OfType<PathItem>().Single(item => item.Layer == "series" && item.Contours[0].Points.Count == 3).Contours[0].Points;
        Assert.Equal(line[1].XMm - line[0].XMm, line[2].XMm - line[1].XMm, 9);
        Assert.Equal(line[0].YMm - line[1].YMm, line[1].YMm - line[2].YMm, 9);
        Assert.True(line[0].YMm > line[2].YMm);
    }

    [Fact]
    public void Series_differ_without_colour()
    {
        var page = LinePlot.Build(Frame, [.. Enumerable.Range(0, 4).Select(i => new PlotSeries($"{i}", [new(0, 900 + i), new(40, 1000 + i)], []))]);

        var dashes = page.Items.OfType<PathItem>().Where(item => item.Layer == "series").Select(item => string.Join(' ', item.Stroke!.DashesMm)).ToList();
        Assert.Equal(4, dashes.Distinct().Count());
    }

    [Fact]
    public void An_uncertainty_is_drawn_as_long_as_it_is()
    {
        var page = LinePlot.Build(Frame, [new("a", [new(0, 900), new(40, 1100)], [new(20, 1000, 50)])]);

        var line = page.Items.OfType<PathItem>().Single(item => item.Layer == "series" && item.Contours.Count == 1 && item.Contours[0].Points.Count == 2).Contours[0].Points;
        var bar = page.Items.OfType<PathItem>().Single(item => item.Layer == "series" && item.Contours.Count == 3).Contours[0].Points;
        Assert.Equal(Math.Abs(line[0].YMm - line[1].YMm) / 2, Math.Abs(bar[0].YMm - bar[1].YMm), 9);
    }

    [Theory]
    [InlineData(0.0, 1.0)]
    [InlineData(828.6, 1262.2)]
    [InlineData(-3.7, 2.1)]
    [InlineData(5.0, 5.0)]
    public void Everything_lies_on_the_paper(double least, double most)
    {
        var page = LinePlot.Build(Frame with { Bands = [] }, [new("a port with a rather long name", [new(0, least), new(118, most)], [new(0, least, 0.1)]), new("b", [], [new(60, most)])]);

        Assert.All(
            page.Items.OfType<PathItem>().SelectMany(item => item.Contours).SelectMany(contour => contour.Points),
            p => Assert.True(p.XMm >= 0 && p.XMm <= page.WidthMm && p.YMm >= 0 && p.YMm <= page.HeightMm));
    }

    [Fact]
    public void A_plot_of_nothing_is_refused() => Assert.Throws<ArgumentException>(() => LinePlot.Build(Frame, [new("a", [], [])]));
}
