using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SectionScan.Workbench.Tests.Hosting;

namespace SectionScan.Workbench.Tests.Journeys;

/// <summary>One switch, and every number of every place is in inches: what is read, what is spoken and what stands in drawings.</summary>
[Collection(SharedWorkbench.Name)]
public partial class InchTests(RunningWorkbench workbench)
{
    private static readonly string[] Places = ["prepare", "capture", "digitise", "compare", "decide", "cut", "prove", "archive"];

    [Fact]
    public async Task With_inches_no_place_speaks_of_millimetres()
    {
        var page = await workbench.PageAsync($"/job/{workbench.Digitised}/prepare");
        await page.GetByText("inch", new() { Exact = true }).ClickAsync();
        try
        {
            var found = new List<string>();
            foreach (var address in Places.Select(place => $"/job/{workbench.Digitised}/{place}").Append("/library"))
            {
                await workbench.GoAsync(page, address);
                await Assertions.Expect(page.Locator("[role=status]").Filter(new() { HasTextRegex = new("…$") })).ToHaveCountAsync(0, new() { Timeout = 60_000 });
                await OpenAsync(page);
                found.AddRange((await WordsAsync(page)).Where(words => Millimetres().IsMatch(words)).Select(words => $"{address.Split('/')[^1]}: {words}"));
                if (address.EndsWith("compare", StringComparison.Ordinal))
                {
                    await page.GetByLabel("Moved up by").FillAsync("0.01");
                    await page.GetByLabel("Moved up by").PressAsync("Tab");
                    await page.GetByText("Aligned by hand: x 0.0000 in, y +0.0100 in").WaitForAsync();
                    await Assertions.Expect(page.GetByText("Not taken")).ToHaveCountAsync(0);
                    found.AddRange((await WordsAsync(page)).Where(words => Millimetres().IsMatch(words)).Select(words => $"by hand: {words}"));
                    await page.GetByRole(AriaRole.Button, new() { Name = "Undo", Exact = true }).ClickAsync();
                    await Assertions.Expect(page.GetByLabel("Moved up by")).ToHaveValueAsync("0");
                }

                // A refusal speaks of inches too.
                if (address.EndsWith("cut", StringComparison.Ordinal))
                {
                    await page.GetByLabel("Left for finishing").FillAsync("100");
                    await page.GetByLabel("Left for finishing").PressAsync("Tab");
                    Assert.Matches(@"lies from 0 to \d\.\d+ in\.", await page.Locator("main .note.problem").First.InnerTextAsync());
                }
            }

            Assert.True(found.Count == 0, string.Join('\n', found.Distinct()));
        }
        finally
        {
            await workbench.GoAsync(page, $"/job/{workbench.Digitised}/prepare");
            await page.GetByText("mm", new() { Exact = true }).First.ClickAsync();
            await Assertions.Expect(page.GetByLabel("mm", new() { Exact = true })).ToBeCheckedAsync();
        }
    }

    private static async Task OpenAsync(IPage page)
    {
        await page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(each => { each.open = true; })");
        await Assertions.Expect(page.Locator("main details:not([open])")).ToHaveCountAsync(0);
    }

    /// <summary>Every text, label, title and description of the page's main part, one by one.</summary>
    private static Task<string[]> WordsAsync(IPage page) => page.EvaluateAsync<string[]>("""
        () => {
          const main = document.querySelector('main'), words = [];
          const walk = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
          while (walk.nextNode()) { if (!walk.currentNode.parentElement.closest('option')) { words.push(walk.currentNode.data); } }
          for (const each of main.querySelectorAll('*')) {
            for (const kind of ['aria-label', 'aria-valuetext', 'title', 'alt', 'placeholder']) { words.push(each.getAttribute(kind) ?? ''); }
          }
          return words.map(text => text.trim()).filter(text => text.length > 0);
        }
        """);

    [GeneratedRegex(@"\bmm(?:²|³|\b)|millimet")]
    private static partial Regex Millimetres();
}
