using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Comparison;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

public sealed class CompareHandTests : IDisposable
{
    private readonly Shop shop = new();
    private readonly JobViewModel window;
    private readonly CompareViewModel compare;

    public CompareHandTests()
    {
        window = SamplePort.WindowOn(shop);
        compare = new(window, shop.Desk);
        compare.ChooseReference("p01-4");
        compare.ChooseMeasured("p04-4");
        compare.ChooseAlignment(AlignmentMethod.AsPlaced);
    }

    public void Dispose()
    {
        compare.Dispose();
        shop.Dispose();
    }

    [Fact]
    public void A_hand_shows_at_once_what_it_would_do_and_only_letting_go_is_a_step_to_take_back()
    {
        var lowest = Deviation();
        var step = window.NextUndo;

        compare.TryHand(new(0.5, 0, 0));
        Assert.Equal(step, window.NextUndo);
        Assert.Equal(HandMove.None, compare.Choice.ByHand);
        var tried = Deviation();
        Assert.NotEqual(lowest, tried);
        Assert.True(compare.Laid!.ValueOrThrow().Alignment.ByHand.IsNone);

        compare.ForgetHandCommand.Execute(null);
        Assert.Equal(lowest, Deviation());

        compare.TryHand(new(0.5, 0, 0));
        compare.KeepHandCommand.Execute(null);
        Assert.Equal("Align by hand", window.NextUndo);
        Assert.Equal(tried, Deviation());

        window.UndoCommand.Execute(null);
        Assert.Equal(lowest, Deviation());
        window.RedoCommand.Execute(null);
        Assert.Equal(tried, Deviation());
    }

    [Fact]
    public void It_is_kept_with_the_job_told_in_words_and_taken_away()
    {
        compare.SetHand(new(0.1234, -0.2, 1.5));

        using var later = shop.WindowLater(window.Live!.Id);
        Assert.Equal(new(0.123, -0.2, 1.5), later.Job.Comparison.ByHand);
        using var again = new CompareViewModel(later, shop.Desk);
        Assert.Equal(Deviation(), again.Comparison!.ValueOrThrow().Result.Lowest.DeviationMm, 9);
        var page = again.Comparison!.ValueOrThrow().Draw(shop.Units.OfLength);
        Assert.Contains("aligned by hand: x +0.123 mm, y −0.20 mm, turned +1.50°", Drawings.Formats.SvgWriter.ToElement(page).ToString(), StringComparison.Ordinal);

        compare.TakeHandAwayCommand.Execute(null);
        Assert.True(compare.Hand.IsNone);
    }

    [Fact]
    public void It_begins_anew_with_another_alignment_and_an_impossible_one_is_refused()
    {
        compare.SetHand(new(0.5, 0, 0));
        compare.SetHand(new(500, 0, 0));
        Assert.Equal("move-out-of-range", compare.Problem!.Code);
        Assert.Equal(0.5, compare.Hand.XMm);

        compare.ChooseAlignment(AlignmentMethod.Centroids);
        Assert.True(compare.Hand.IsNone);
    }

    [Fact]
    public void What_happens_elsewhere_in_the_job_does_not_take_the_section_out_of_the_hand()
    {
        compare.TryHand(new(0.5, 0, 0));

        window.RenameCommand.Execute("Renamed meanwhile");
        compare.KeepHandCommand.Execute(null);

        Assert.Equal(0.5, window.Job.Comparison.ByHand.XMm);
    }

    /// <summary>The true polygons of sample-images/truth: their areas are written there.</summary>
    [Fact]
    public void Two_ports_stand_beside_each_other_station_by_station()
    {
        Assert.Null(compare.Beside);
        compare.ChooseFirstPort(JobPorts.KeyOf("as cast"));
        compare.ChooseSecondPort(JobPorts.KeyOf("exemplar"));

        var stations = compare.Beside!.ValueOrThrow();

        Assert.Equal(Enumerable.Range(1, 8), stations.Select(each => each.Reference.Station!.Value));
        Assert.All(stations, each =>
        {
            var area = each.Measures[0];
            Assert.Equal(TrueArea("p04", "p05", each.Reference.Station!.Value), area.Reference.Value, 0.02);
            Assert.Equal(TrueArea("p01", "p02", each.Reference.Station!.Value), area.Measured.Value, 0.02);
            Assert.True(area.Difference.StandardUncertainty > 0);
        });

        compare.ChooseSecondPort(JobPorts.KeyOf("nobody's"));
        Assert.Equal("port-gone", compare.Beside!.TryGet(out _, out var problem) ? "" : problem.Code);
    }

    private static double TrueArea(string first, string second, int station) =>
        Testing.Truth.SamplePhotos.TruthOf(first).Sections.Concat(Testing.Truth.SamplePhotos.TruthOf(second).Sections).Single(each => each.Station == station).AreaMm2;

    private double Deviation() => compare.Comparison!.ValueOrThrow().Result.Lowest.DeviationMm;
}
