using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Walls;
using SectionScan.Metrology.Outlines;
using SectionScan.Porting.Walls;
using SectionScan.Testing.Sections;

namespace SectionScan.Drawings.Tests.Walls;

public class WallsPageTests
{
    private static readonly (WallStage Stage, Outline Outline)[] Outlines =
    [
        (WallStage.Present, SampleSections.Ellipse(30, 30, 720)), (WallStage.Target, SampleSections.Ellipse(34, 34, 720)), (WallStage.Finished, SampleSections.Ellipse(34.4, 34.4, 720)),
    ];

    private static readonly KeepOut Drain = Circle("oil drain", 23.5, 0, 4);
    private static readonly KeepOut Pocket = new("spring pocket", new KeepOutLine([new(-20, 22), new(20, 22)]), 0.2, 2.5, KeepOutSource.Measured, string.Empty);

    private static readonly KeepOut Jacket =
        new("water jacket", new KeepOutOutline(SampleSections.Ellipse(10, 20).Moved(-26, -4)), 0.2, 2.5, KeepOutSource.Drawing, string.Empty);

    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    [InlineData("a3")]
    public void Outlines_keep_outs_limits_and_walls_stand_on_the_page(string paper)
    {
        var page = Build(PaperSize.FromName(paper)!, LengthUnit.Millimetre, Drain, Pocket, Jacket);

        PageChecks.AssertWithin(page);
        Assert.Superset(
            new HashSet<string> { "present", "target", "finished", "keep-out", "wall", "label", "legend", "text" }, page.Items.Select(item => item.Layer).ToHashSet());
        var words = page.Items.OfType<TextItem>().Select(item => item.Text).ToList();
        Assert.All(words, text => Assert.True(StrokeFont.CanWrite(text), text));
        Assert.Contains("A  2.30 mm", words); // to the drain, from the finished outline: 23.5 − 4 − 17.2
        Assert.Contains("A  oil drain", words);
        Assert.Contains("Cautions.", words);
        Assert.Equal(9, page.Items.Count(item => item is PathItem { Layer: "wall" }));

        // Three borders and three limits: circle, line and outline each have both.
        Assert.Equal(6, page.Items.Count(item => item.Layer == "keep-out"));
    }

    [Fact]
    public void A_wall_is_as_long_on_paper_as_it_is_times_the_scale()
    {
        var page = Build(PaperSize.A4, LengthUnit.Millimetre, Drain);

        var target = page.Items.OfType<PathItem>().Single(item => item.Layer == "target").Contours.Single().Points;
        var scale = (target.Max(p => p.XMm) - target.Min(p => p.XMm)) / 34;
        var walls = page.Items.OfType<PathItem>().Where(item => item.Layer == "wall").Select(item => item.Contours.Single().Points).ToList();
        Assert.Equal([2.3, 2.5, 4.5], walls.Select(ends => Math.Round(double.Hypot(ends[1].XMm - ends[0].XMm, ends[1].YMm - ends[0].YMm) / scale, 2)));
    }

    [Fact]
    public void Inches_are_shown_as_inches() =>
        Assert.Contains("A  0.0906 in", Build(PaperSize.A4, LengthUnit.Inch, Drain).Items.OfType<TextItem>().Select(item => item.Text));

    [Fact]
    public void More_keep_outs_than_a_page_has_lines_keep_the_likeliest_and_say_so()
    {
        var page = Build(PaperSize.A4, LengthUnit.Millimetre, [.. Enumerable.Range(0, 30).Select(i => Circle($"stud {i}", 60 - i, 3, 2)), Drain]);

        PageChecks.AssertWithin(page);
        var words = page.Items.OfType<TextItem>().Select(item => item.Text).ToList();
        Assert.Contains("A  oil drain", words);
        Assert.Contains(words, text => text.StartsWith("69 more", StringComparison.Ordinal)); // 93 less 24
    }

    private static KeepOut Circle(string name, double xMm, double yMm, double radiusMm) =>
        new(name, new KeepOutCircle(new(xMm, yMm), radiusMm), 0.1, 2.5, KeepOutSource.Measured, string.Empty);

    private static Page Build(PaperSize paper, LengthUnit unit, params KeepOut[] keepOuts)
    {
        var walls = keepOuts.SelectMany(keepOut => Outlines.Select(each =>
            RemainingWall.Of(each.Outline, each.Stage, keepOut, Outlines[0].Outline, [], [], WallAssumptions.Usual))).ToList();
        return WallsPage.Build(Outlines, walls, new("Walls, station 3", "own", ["Something is assumed.", "Cautions."], unit), paper);
    }
}
