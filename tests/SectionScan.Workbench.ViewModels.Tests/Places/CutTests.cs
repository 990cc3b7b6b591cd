using SectionScan.Drawings.Pages;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Porting.Templates;
using SectionScan.Workbench.ViewModels.Desk;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

public sealed class CutTests : ShopWithPlaces
{
    [Fact]
    public async Task The_plan_and_the_templates_follow_the_target_and_its_settings()
    {
        var window = SamplePort.WithTarget(Shop);
        var benches = new JobBenches(Shop.Desk);
        var cut = Cut(window, benches);
        await cut.Working;

        var plan = cut.Plan!.ValueOrThrow();
        Assert.Equal(8, plan.Stations.Count);
        Assert.Equal("station 4", plan.Stations[3].Title);
        Assert.Equal(SectionTemplate.UsualAllowanceMm, plan.Order.AllowanceMm);
        var set = cut.Templates!.ValueOrThrow();
        Assert.Equal(16, set.Made.Count);
        var target = benches.Of(window.Live)!.Targets()!.ValueOrThrow()[3];
        var finish = set.Made.Single(each => each.Station == 4 && each.Stage == "finish");
        var rough = set.Made.Single(each => each.Station == 4 && each.Stage == "rough");
        var points = target.Document.Section.Outline.Points.ToArray();
        Assert.Equal(points.Max(p => p.XMm) - points.Min(p => p.XMm), finish.WidthMm, 0.01);
        Assert.Equal(finish.WidthMm - (2 * SectionTemplate.UsualAllowanceMm), rough.WidthMm, 0.02);

        var version = cut.Version;
        cut.SetAllowance(0.5);
        await cut.Working;
        Assert.True(cut.Version > version);
        Assert.Equal(finish.WidthMm - 1, cut.Templates!.ValueOrThrow().Made.Single(each => each.Station == 4 && each.Stage == "rough").WidthMm, 0.02);
        Assert.Equal("Set the finishing allowance", window.NextUndo);

        window.UndoCommand.Execute(null);
        await cut.Working;
        Assert.Equal(rough.WidthMm, cut.Templates!.ValueOrThrow().Made.Single(each => each.Station == 4 && each.Stage == "rough").WidthMm, 1e-9);

        cut.ChoosePaper("a3");
        cut.ChoosePlates(true);
        cut.ChoosePlugs(false);
        await cut.Working;
        Assert.All(cut.Templates!.ValueOrThrow().Made, each => Assert.Equal("outside", each.Kind));
        Assert.All(cut.Templates!.ValueOrThrow().Pages, page => Assert.Equal((420.0, 297.0), (page.WidthMm, page.HeightMm)));
        cut.ChoosePlates(false);
        await cut.Working;
        Assert.False(cut.Templates!.TryGet(out _, out var none));
        Assert.Equal("no-template-kind", none.Code);
    }

    [Fact]
    public async Task Lengths_that_make_no_sense_are_refused_and_a_print_is_corrected_by_the_check_bars()
    {
        var window = SamplePort.WithTarget(Shop);
        var cut = Cut(window, new(Shop.Desk));
        foreach (var set in new Action<double?>[] { cut.SetAllowance, cut.SetClearance, cut.SetKerf, cut.SetSheet, cut.SetStem })
        {
            set(-1);
            Assert.Equal("length-out-of-range", cut.Problem!.Code);
            set(null);
            Assert.Equal("length-out-of-range", cut.Problem!.Code);
        }

        Assert.Equal(new CutSettings(), window.Job.Cut);
        cut.SetClearance(0.1);
        Assert.Null(cut.Problem);
        cut.ChoosePaper("napkin");
        Assert.Equal(PaperSize.A4.Name, window.Job.Cut.Paper);

        // A printer that prints 0.4 % short across is sent a page drawn that much longer: nominal over measured.
        await cut.Working;
        var plain = WidthOfInk(cut);
        window.Live!.Do("Set up", job => job with { CheckBarAcrossMm = 199.2, CheckBarUpMm = 150 });
        await cut.Working;
        Assert.Equal(plain * 200 / 199.2, WidthOfInk(cut), 0.02);
        cut.CorrectPrint(false);
        await cut.Working;
        Assert.Equal(plain, WidthOfInk(cut), 1e-6);
    }

    [Fact]
    public void True_size_follows_the_bar_measured_on_the_screen()
    {
        var window = SamplePort.WithTarget(Shop);
        var cut = Cut(window, new(Shop.Desk));
        var page = new PageBuilder(297, 210, "page").Build();
        Assert.Equal(1123, cut.WidthPx(page)); // CSS: 96 px an inch

        cut.ShowTrueSize(true);
        cut.SetScreenBar(80);
        Assert.Equal(1403, cut.WidthPx(page));
        cut.SetScreenBar(1);
        Assert.Equal("length-out-of-range", cut.Problem!.Code);
        Assert.Equal(1403, cut.WidthPx(page));
    }

    [Fact]
    public async Task Without_a_target_there_is_nothing_to_cut()
    {
        var window = SamplePort.WindowOn(Shop);
        var cut = Cut(window, new(Shop.Desk));
        await cut.Working;

        Assert.False(cut.HasTarget);
        Assert.Null(cut.Plan);
        Assert.Null(cut.Templates);
    }

    private static double WidthOfInk(CutViewModel cut)
    {
        var points = cut.Templates!.ValueOrThrow().Pages[0].Items.OfType<PathItem>().Where(item => item.Layer.Contains("bar", StringComparison.OrdinalIgnoreCase))
            .SelectMany(item => item.Contours).SelectMany(contour => contour.Points).ToList();
        return points.Max(p => p.XMm) - points.Min(p => p.XMm);
    }

    private CutViewModel Cut(JobViewModel window, JobBenches benches)
    {
        var cut = new CutViewModel(window, benches);
        Places.Add(cut);
        cut.Begin();
        return cut;
    }
}
