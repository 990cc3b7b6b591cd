using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Comparison;
using SectionScan.Porting.Proof;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

public sealed class ProveTests : ShopWithPlaces
{
    [Fact]
    public async Task The_station_cut_too_far_is_found_and_no_other_is_accused()
    {
        var window = SamplePort.WithTarget(Shop);
        var prove = Prove(window);
        await prove.Working;
        Assert.False(prove.IsChosen);
        Assert.Null(prove.Proof);

        // sample-images/README.md: station 4 is cut 0.400 mm beyond the exemplar on its right side, at -12 degrees.
        prove.ChooseFinished(JobPorts.KeyOf("finished"));
        prove.ChooseTarget(JobPorts.KeyOf("exemplar"));
        prove.ChooseAlignment(AlignmentMethod.AsPlaced);
        prove.SetInside(0.6);
        prove.SetOutside(0.1);
        await prove.Working;

        var proof = prove.Proof!.ValueOrThrow();
        Assert.Equal(8, proof.Proved.Count);
        Assert.Empty(proof.Unproved);
        Assert.Equal([4], proof.Proved.Where(section => section.Proof.Verdict == Verdict.DoesNotConform).Select(section => section.Finished.Station));
        var worst = proof.Proved[3].Proof.Findings[0].Worst;
        Assert.Equal(0.400, worst.DeviationMm, 0.05);
        Assert.Equal(-12, worst.Sample.Direction.Degrees, 8.0);
        Assert.Equal(OutlineRegion.Right, worst.Sample.Region);

        // The truth lies in one frame: target and finished section need no fit.
        window.Live!.Do("Set up", job => job with { Target = job.Target with { Alignment = AlignmentMethod.AsPlaced } });
        prove.ChooseTarget(null);
        prove.SetInside(1);
        await prove.Working;
        Assert.Equal([4], prove.Proof!.ValueOrThrow().Proved.Where(section => section.Proof.Verdict == Verdict.DoesNotConform).Select(section => section.Finished.Station));
        Assert.All(prove.Proof!.ValueOrThrow().Proved, section => Assert.True(section.Target.IsExact));
    }

    [Fact]
    public async Task A_station_that_was_not_measured_is_told_as_not_proved_and_all_is_there_after_the_program_ends()
    {
        var window = SamplePort.WithTarget(Shop);
        var prove = Prove(window);
        prove.ChooseFinished(JobPorts.KeyOf("finished"));
        window.Live!.Do("Remove", job => job with { Sections = [.. job.Sections.Where(section => section.Id != "p06-2")] });
        await prove.Working;

        var proof = prove.Proof!.ValueOrThrow();
        Assert.Equal(7, proof.Proved.Count);
        Assert.Equal("station-alone", Assert.Single(proof.Unproved).Code);

        using var again = new JobViewModel(Shop.NewDesk(), Shop.Units);
        again.Open(window.Live.Id);
        Assert.Equal(JobPorts.KeyOf("finished"), again.Job.Proof.Finished);
        again.UndoCommand.Execute(null);
        again.UndoCommand.Execute(null);
        Assert.Null(again.Job.Proof.Finished);
    }

    [Fact]
    public void Bounds_that_make_no_sense_are_refused()
    {
        var window = SamplePort.WithTarget(Shop);
        var prove = Prove(window);
        prove.SetInside(-0.1);
        Assert.Equal("length-out-of-range", prove.Problem!.Code);
        prove.SetOutside(null);
        Assert.Equal("length-out-of-range", prove.Problem!.Code);
        prove.SetOther(6);
        Assert.Equal("length-out-of-range", prove.Problem!.Code);
        Assert.Equal(new ProofSettings(), window.Job.Proof);
    }

    private ProveViewModel Prove(JobViewModel window)
    {
        var prove = new ProveViewModel(window, Shop.Desk, new(Shop.Desk));
        Places.Add(prove);
        prove.Begin();
        return prove;
    }
}
