using System.Net;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.Phones;
using SectionScan.Workbench.Tests.Hosting;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.Tests.Journeys;

/// <summary>Every place is held to axe-core's rules, WCAG 2.2 AA and best practices, in light and dark.</summary>
[Collection(SharedWorkbench.Name)]
public class AccessibilityTests(RunningWorkbench workbench)
{
    private static readonly string[] Places = ["prepare", "capture", "digitise", "compare", "decide", "cut", "prove", "archive"];

    /// <summary>A phone, a small laptop and a 4K screen (ITU-R BT.2020: 3840 by 2160).</summary>
    [Theory]
    [InlineData(360, 740)]
    [InlineData(1280, 800)]
    [InlineData(3840, 2160)]
    public async Task No_place_has_a_violation_or_runs_off_the_side(int width, int height)
    {
        var page = await workbench.PageAsync("/", width, height);
        var found = new List<string>();
        foreach (var address in Places.Select(place => $"/job/{workbench.Digitised}/{place}").Concat(["/", "/library", "/not-found", "/job/none"]))
        {
            await workbench.GoAsync(page, address);
            await LookAsync(page, address, found);
            if (await page.EvaluateAsync<int>("document.documentElement.scrollWidth") > width)
            {
                found.Add($"{address} runs off the side at {width} px");
            }
        }

        Assert.Empty(found);
    }

    [Fact]
    public async Task Nor_has_a_page_that_the_phone_sees()
    {
        var desk = new JobDesk(JobsFolder.Open(Path.Combine(workbench.Folder, "phone")).ValueOrThrow(), "none", [], "test", TimeProvider.System);
        await using var door = new PhoneDoor(TimeProvider.System);
        await door.OpenAsync(desk.Open(desk.Begin("Phone").ValueOrThrow()).ValueOrThrow(), IPAddress.Loopback);
        var page = await workbench.PageAsync("/", 360, 740);
        var found = new List<string>();

        await page.GotoAsync(door.Address!.ToString());
        await LookAsync(page, "phone-entry", found);
        await page.GetByRole(AriaRole.Button, new() { Name = "Let this phone in" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Send photos" }).WaitForAsync();
        await LookAsync(page, "phone-send", found);
        Assert.Equal(360, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        await page.SetInputFilesAsync("#photos", SamplePhotos.PhotoPath("c01"));
        await page.GetByText("c01.jpg: taken in.").WaitForAsync();

        Assert.Empty(found);
    }

    /// <summary>Judges a page in light and dark, and keeps its pictures beside the tests for who wants to look at them.</summary>
    private static async Task LookAsync(IPage page, string name, List<string> found)
    {
        foreach (var scheme in page.ViewportSize!.Width == 1280 ? [ColorScheme.Light, ColorScheme.Dark] : new[] { ColorScheme.Dark })
        {
            await page.EmulateMediaAsync(new() { ColorScheme = scheme });
            var result = await page.RunAxe();
            found.AddRange(result.Violations.Select(v => $"{name} {scheme} {v.Id}: {v.Help} {string.Join(' ', v.Nodes.Select(n => n.Html))}"));
            await page.ScreenshotAsync(new()
            {
                Path = Path.Combine(AppContext.BaseDirectory, "pictures", $"{name.Trim('/').Split('/')[^1]}-{page.ViewportSize!.Width}-{scheme}.png".ToLowerInvariant().TrimStart('-')),
                FullPage = page.ViewportSize!.Width < 3000,
            });
        }
    }
}
