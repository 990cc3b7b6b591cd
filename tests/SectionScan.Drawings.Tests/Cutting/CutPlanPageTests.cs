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
