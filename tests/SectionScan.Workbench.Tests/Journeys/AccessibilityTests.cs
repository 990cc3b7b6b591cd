using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using SectionScan.Workbench.Tests.Hosting;

namespace SectionScan.Workbench.Tests.Journeys;

/// <summary>Every place is held to axe-core's rules, WCAG 2.2 AA and best practices, in light and dark.</summary>
[Collection(SharedWorkbench.Name)]
public class AccessibilityTests(RunningWorkbench workbench)
{
    private static readonly string[] Places = ["prepare", "capture", "digitise", "compare", "decide", "cut", "prove", "archive"];

    [Fact]
    public async Task No_place_has_a_violation()
    {
        var page = await workbench.PageAsync();
        var found = new List<string>();
        foreach (var address in Places.Select(place => $"/job/{workbench.Digitised}/{place}").Prepend("/"))
        {
            await workbench.GoAsync(page, address);
            foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
            {
                await page.EmulateMediaAsync(new() { ColorScheme = scheme });
                var result = await page.RunAxe();
                found.AddRange(result.Violations.Select(v => $"{address} {scheme} {v.Id}: {v.Help} {string.Join(' ', v.Nodes.Select(n => n.Html))}"));
            }
        }

        Assert.Empty(found);
    }
}
