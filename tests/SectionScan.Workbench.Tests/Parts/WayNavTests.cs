using Bunit;
using Microsoft.Extensions.DependencyInjection;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Workbench.Parts;
using SectionScan.Workbench.ViewModels.Desk;
using SectionScan.Workbench.ViewModels.Places;
using SectionScan.Workbench.ViewModels.Way;

namespace SectionScan.Workbench.Tests.Parts;

public sealed class WayNavTests : BunitContext
{
    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-way-").FullName;

    [Fact]
    public void It_names_all_places_says_which_one_is_shown_and_follows_the_job()
    {
        var desk = new JobDesk(JobsFolder.Open(folder).ValueOrThrow(), "none", [], "test", TimeProvider.System);
        using var window = new JobViewModel(desk, new(folder));
        window.Open(desk.Begin("Way").ValueOrThrow());
        Services.AddSingleton(window);

        var way = Render<WayNav>(parameters => parameters.Add(each => each.Here, Place.Capture));

        Assert.Equal(
            ["prepare", "capture", "digitise", "compare", "decide", "cut", "prove", "archive"], way.FindAll("a").Select(a => a.GetAttribute("href")!.Split('/')[^1]));
        Assert.EndsWith("/capture", way.Find("[aria-current=step]").GetAttribute("href"), StringComparison.Ordinal);
        Assert.StartsWith("next", way.Find(".is-next .way-standing").TextContent, StringComparison.Ordinal);
        Assert.Empty(way.FindAll(".is-done"));

        window.Live!.Do("Measure the bars", job => job with { CheckBarAcrossMm = 200, CheckBarUpMm = 150 });
        way.WaitForAssertion(() => Assert.StartsWith("done", way.Find(".is-done .way-standing").TextContent, StringComparison.Ordinal));
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        Directory.Delete(folder, recursive: true);
    }
}
