using SectionScan.Jobs.PortingJobs;
using SectionScan.Workbench.ViewModels.Way;

namespace SectionScan.Workbench.ViewModels.Tests.Way;

public class WayStepTests
{
    [Fact]
    public void A_new_job_goes_from_prepare_to_archive_and_begins_with_prepare()
    {
        var way = WayStep.Of(new() { Name = "Trial" });

        Assert.Equal(["Prepare", "Capture", "Digitise", "Compare", "Decide", "Cut", "Prove", "Archive"], way.Select(step => step.Word));
        Assert.Equal(WayState.Next, way[0].State);
        Assert.All(way.Skip(1), step => Assert.Equal(WayState.ToCome, step.State));
    }

    [Fact]
    public void What_is_done_is_said_and_the_first_gap_is_next()
    {
        var photo = new JobPhoto("photo-1", "photo-1.jpg", "a.jpg", 4000, 3000, 0) { Runs = 1 };
        var job = new PortingJob
        {
            Name = "Trial",
            CheckBarAcrossMm = 200,
            CheckBarUpMm = 150,
            Photos = [photo, photo with { Id = "photo-2", Runs = 0 }],
        };

        var way = WayStep.Of(job);

        Assert.Equal([WayState.Done, WayState.Done, WayState.Next], way.Take(3).Select(step => step.State));
        Assert.Equal("print checked", way[0].Standing);
        Assert.Equal("2 photos", way[1].Standing);
        Assert.Equal("1 of 2 photos", way[2].Standing);
    }
}
