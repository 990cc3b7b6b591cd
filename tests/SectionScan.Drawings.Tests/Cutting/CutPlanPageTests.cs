using SectionScan.Drawings.Cutting;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Porting.Cutting;
using SectionScan.Porting.Walls;
using SectionScan.Testing.Sections;

namespace SectionScan.Drawings.Tests.Cutting;

public class CutPlanPageTests
{
    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    [InlineData("a3")]
    public void The_page_of_a_station_holds_figure_tables_and_cautions(string paper)
    {
        var page = Station(PaperSize.FromName(paper)!, LengthUnit.Millimetre);

        PageChecks.AssertWithin(page);
        Assert.Superset(
            new HashSet<string> { "finish", "now", "keep-out", "present", "target", "thin-wall", "depth", "legend", "text" },
            page.Items.Select(item => item.Layer).ToHashSet());
        var words = page.Items.OfType<TextItem>().Select(item => item.Text).ToList();
        Assert.All(words, text => Assert.True(StrokeFont.CanWrite(text), text));
        Assert.Contains("1.2 / 2.0", words);
        Assert.Contains("CAUTION", string.Join(' ', words), StringComparison.Ordinal);
        Assert.Contains("licensed practice", string.Join(' ', words), StringComparison.Ordinal);
    }

    [Fact]
    public void Inches_are_shown_as_inches() =>
        Assert.Contains("0.047 / 0.079", Station(PaperSize.A4, LengthUnit.Inch).Items.OfType<TextItem>().Select(item => item.Text));

    [Fact]
    public void Keep_outs_near_the_port_are_shown_whole_with_their_limits()
    {
        // A target of 34 mm; a spring pocket 10 mm above its roof and a drain 2 mm beside it.
        var (present, target) = (SampleSections.Ellipse(30, 30, 720), SampleSections.Ellipse(34, 34, 720));
        KeepOut[] behind =
        [
            new("spring pocket", new KeepOutLine([new(-12, 27), new(12, 27)]), 0.2, 2.5, KeepOutSource.Measured, string.Empty),
            new("oil drain", new KeepOutCircle(new(23, 0), 4), 0.1, 2.5, KeepOutSource.Measured, string.Empty),
        ];
        var cut = StationCut.Plan(
            present, target, 0.8, 0.02, [.. behind.Select(each => RemainingWall.Of(target, WallStage.Target, each, present, [], [], WallAssumptions.Usual))], "station 3").ValueOrThrow();

        foreach (var page in new[] { CutPlanPage.Station(cut, new("Cut plan", "as cast", "target"), PaperSize.A4), CutPlanPage.Small(cut, "station 3", LengthUnit.Millimetre) })
        {
            // What is cut off at the border of the figure is left as an open line.
            var borders = page.Items.OfType<PathItem>().Where(item => item.Layer == "keep-out").SelectMany(item => item.Contours).ToList();
            Assert.Equal(4, borders.Count);
            Assert.Equal(3, borders.Count(contour => contour.IsClosed));
            PageChecks.AssertWithin(page);
        }
    }

    [Fact]
    public void The_first_page_tells_the_order_of_work()
    {
        var page = CutPlanPage.Summary(
            "Cut plan", "own to target", [["station", "a", "b", "c", "d", "e", "f"], ["station 3", "1", "2", "3", "4", "5", "6"]], ["First this.", "Then that."], CutCautions.All, PaperSize.A4);

        PageChecks.AssertWithin(page);
        Assert.Contains(page.Items.OfType<TextItem>(), text => text.Text == "Then that.");
    }

    private static Page Station(PaperSize paper, LengthUnit unit)
    {
        var (present, target) = (SampleSections.Ellipse(30, 30, 720), SampleSections.Ellipse(34, 34, 720));
        var drain = new KeepOut("oil drain", new KeepOutCircle(new(23, 0), 4), 0.1, 2.5, KeepOutSource.Measured, string.Empty);
        var wall = RemainingWall.Of(target, WallStage.Target, drain, present, [], [], WallAssumptions.Usual);
        var cut = StationCut.Plan(present, target, 0.8, 0.02, [wall], "station 3").ValueOrThrow();
        return CutPlanPage.Station(cut, new("Cut plan, intake 2, station 3", "as cast", "target") { Steps = ["Rough the roof."], Unit = unit }, paper);
    }
}
