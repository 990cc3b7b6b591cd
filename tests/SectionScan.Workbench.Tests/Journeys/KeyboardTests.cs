using Microsoft.Playwright;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.Tests.Hosting;

namespace SectionScan.Workbench.Tests.Journeys;

/// <summary>Everything by keyboard, and nothing by mouse: WCAG 2.2, 2.1.1 Keyboard, 2.1.2 No Keyboard Trap, 2.4.3 Focus Order, 2.4.7 and 2.4.11
/// Focus Visible and Not Obscured, 2.4.13 Focus Appearance, 2.5.5 and 2.5.8 Target Size.</summary>
[Collection(SharedWorkbench.Name)]
public class KeyboardTests(RunningWorkbench workbench)
{
    private const double LeastPx = 24;
    private const double LeastOnPhonePx = 44;

    private static readonly string[] Places = ["decide", "digitise", "compare", "prepare", "capture", "cut", "prove", "archive"];

    [Theory]
    [InlineData(1440, 900, ColorScheme.Light, 11)]
    [InlineData(360, 740, ColorScheme.Light, 11)]
    [InlineData(1440, 900, ColorScheme.Dark, 1)] // in the dark only the colours differ
    public async Task Tab_reaches_every_control_in_order_and_shows_where_it_is(int width, int height, ColorScheme scheme, int pages)
    {
        var page = await workbench.PageAsync("/", width, height, scheme);
        var wrong = new List<string>();
        foreach (var address in Places.Select(place => $"/job/{workbench.Digitised}/{place}").Concat(["/", "/library", "/not-found"]).Take(pages))
        {
            await workbench.GoAsync(page, address);
            await SettledAsync(page);
            var (stops, controls) = await KeyboardWalk.RoundAsync(page);
            var where = address.Split('/')[^1];

            Assert.NotEmpty(stops);
            wrong.AddRange(controls.Where(control => stops.All(stop => stop.Number != control.Number)).Select(control => $"{where}: {control.Name} is not reached"));
            var order = controls.Select(control => control.Number).ToList();
            var places = stops.Select(stop => order.IndexOf(stop.Number)).Where(at => at >= 0).ToList();
            wrong.AddRange(places.Zip(places.Skip(1)).Where(pair => pair.Second < pair.First).Select(pair =>
                $"{where}: {controls[pair.Second].Name} comes after {controls[pair.First].Name}"));
            foreach (var stop in stops)
            {
                var least = width < 400 && stop.IsPressed ? LeastOnPhonePx : LeastPx;
                if (stop.Indicator is { } amiss)
                {
                    wrong.Add($"{where}: {stop.Name}: {amiss}");
                }

                if (stop.IsCovered)
                {
                    wrong.Add($"{where}: {stop.Name}: something lies on it");
                }

                if (stop.Width < least - 0.5 || stop.Height < least - 0.5)
                {
                    wrong.Add($"{where}: {stop.Name}: {stop.Width:0.#} × {stop.Height:0.#} px");
                }
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong.Distinct()));
    }

    [Fact]
    public async Task The_walk_tells_what_is_not_reached_not_seen_or_too_small()
    {
        var page = await workbench.PageAsync($"/job/{workbench.Digitised}/prepare");
        await page.EvaluateAsync("""
            () => {
              const rules = document.styleSheets[0];
              rules.insertRule('a[href^="/library"]:focus-visible { outline: none; }', rules.cssRules.length);
              rules.insertRule('.way a:focus-visible { outline-color: rgb(240, 240, 240); }', rules.cssRules.length);
              rules.insertRule('[data-key] { min-height: 0; height: 20px; padding: 0; }', rules.cssRules.length);
              document.querySelector('#lens-photos').tabIndex = -1;
            }
            """);

        var (stops, controls) = await KeyboardWalk.RoundAsync(page);

        Assert.Equal("outline 0 px", stops.Single(stop => stop.Name.Contains("Library", StringComparison.Ordinal)).Indicator);
        Assert.StartsWith("contrast 1.", stops.First(stop => stop.Name.Contains("Capture", StringComparison.Ordinal)).Indicator, StringComparison.Ordinal);
        Assert.Equal(20, stops.Single(stop => stop.Name.Contains("Undo", StringComparison.Ordinal)).Height);
        Assert.Contains("input[file]", controls.Single(control => stops.All(stop => stop.Number != control.Number)).Name, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_job_goes_from_the_first_page_to_its_templates_by_keys_alone()
    {
        var page = await workbench.PageAsync();
        await KeyboardWalk.GoToAsync(page, "\"Name of the job\"");
        await page.Keyboard.TypeAsync("By keys alone");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Prepare", Exact = true }).WaitForAsync();

        await KeyboardWalk.GoToAsync(page, "\"Next: capture\"");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Capture", Exact = true }).WaitForAsync();
        foreach (var (photo, stage) in new[] { ("p01", "exemplar"), ("p04", "as cast") })
        {
            await KeyboardWalk.GoToAsync(page, "input[file]");
            var chooser = await page.RunAndWaitForFileChooserAsync(() => page.Keyboard.PressAsync("Space"));
            await chooser.SetFilesAsync(SamplePhotos.PhotoPath(photo));
            await page.GetByRole(AriaRole.Heading, new() { Name = photo + ".jpg" }).WaitForAsync();
            await KeyboardWalk.GoToAsync(page, $"\"Remove {photo}.jpg\"");
            await KeyboardWalk.GoToAsync(page, "\"Slice thickness, mm\"", "Shift+Tab");
            await page.Keyboard.TypeAsync("6");
            await KeyboardWalk.GoToAsync(page, "\"Shows\"", "Shift+Tab");
            await page.Keyboard.TypeAsync(stage);
            await page.Keyboard.PressAsync("Tab");
        }

        await KeyboardWalk.GoToAsync(page, "\"Next: digitise\"");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Digitise", Exact = true }).WaitForAsync();
        await KeyboardWalk.GoToAsync(page, "\"Digitise 2 photos\"");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("All photos are digitised: 8 sections.").WaitForAsync();

        await KeyboardWalk.GoToAsync(page, "\"5 Decide");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Decide", Exact = true }).WaitForAsync();
        await KeyboardWalk.GoToAsync(page, "\"Port to work on");
        await page.Keyboard.TypeAsync("as cast");
        await KeyboardWalk.GoToAsync(page, "\"Port to work toward");
        await page.Keyboard.TypeAsync("exemplar");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Station 4" })).ToBeVisibleAsync();

        // A slider by its arrows: five in a hundred a step, kept when it is let go.
        await KeyboardWalk.GoToAsync(page, "\"All round");
        await page.Keyboard.PressAsync("ArrowLeft");
        await Assertions.Expect(page.GetByLabel("All round")).ToHaveValueAsync("95");
        await page.Keyboard.PressAsync("ArrowLeft");
        await Assertions.Expect(page.GetByLabel("All round")).ToHaveValueAsync("90");
        await Assertions.Expect(page.GetByRole(AriaRole.Slider, new() { NameRegex = new("^Roof \\d") })).ToHaveValueAsync("90");

        await KeyboardWalk.GoToAsync(page, "\"Next: cut\"");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Templates" }).WaitForAsync();
        await KeyboardWalk.GoToAsync(page, "\"templates (PDF)\"");
        var sheets = await page.RunAndWaitForDownloadAsync(() => page.Keyboard.PressAsync("Enter"));
        await using var content = await sheets.CreateReadStreamAsync();
        var begin = new byte[5];
        await content.ReadExactlyAsync(begin);
        Assert.Equal("%PDF-"u8, begin);
    }

    [Fact]
    public async Task A_point_is_moved_on_the_photo_by_keys_alone()
    {
        var page = await workbench.PageAsync($"/job/{workbench.Digitised}/digitise");
        await KeyboardWalk.GoToAsync(page, "\"Move a point\"");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("Click the place on the outline that lies wrong.").WaitForAsync();
        await KeyboardWalk.GoToAsync(page, "\"This section\"", "Shift+Tab");
        await page.Keyboard.PressAsync("Enter");
        await KeyboardWalk.GoToAsync(page, "div \"Photo p01.jpg with its outlines.");

        // From the section's middle the cross goes to the right until it lies on the outline: an arrow is 60 px, with Shift 4 px.
        var away = await page.EvaluateAsync<double>(
            "() => { const o = document.querySelector('.view .is-chosen').getBoundingClientRect(); return o.width / 2; }");
        await StepAsync(page, "ArrowRight", (int)(away / 60));
        await StepAsync(page, "Shift+ArrowRight", (int)Math.Round(away % 60 / 4));
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("Now click where the edge really is.").WaitForAsync();
        await StepAsync(page, "Shift+ArrowRight", 2);
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("1 correction by hand so far.").WaitForAsync();
        Assert.Equal("application", await page.EvaluateAsync<string>("document.activeElement.getAttribute('role')"));

        await page.Keyboard.PressAsync("Control+z");
        await page.GetByText("1 correction by hand so far.").WaitForAsync(new() { State = WaitForSelectorState.Hidden });
    }

    [Fact]
    public async Task A_section_is_aligned_by_keys_alone()
    {
        var page = await workbench.PageAsync($"/job/{workbench.Digitised}/compare");
        await KeyboardWalk.GoToAsync(page, "div \"finished, station 4 on exemplar, station 4.");
        await StepAsync(page, "ArrowUp", 3);
        await page.Keyboard.PressAsync("Shift+ArrowLeft");
        await page.Keyboard.PressAsync(",");
        await Assertions.Expect(page.GetByLabel("Moved up by")).ToHaveValueAsync("0.3");
        await Assertions.Expect(page.GetByLabel("Moved right by")).ToHaveValueAsync("-1");
        await Assertions.Expect(page.GetByLabel("Turned left by")).ToHaveValueAsync("0.1");
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.GetByLabel("Moved up by")).ToHaveValueAsync("0");

        await page.Keyboard.PressAsync("ArrowUp");
        await KeyboardWalk.GoToAsync(page, "\"Turned left by");
        await Assertions.Expect(page.Locator("[data-key=undo]")).ToHaveAttributeAsync("title", "Take back: Align by hand");
        await KeyboardWalk.GoToAsync(page, "\"Back to the alignment chosen\"");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByLabel("Moved up by")).ToHaveValueAsync("0");

        // The job is left as it was found, steps and all.
        await page.Locator("h1").FocusAsync();
        await page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(page.GetByLabel("Moved up by")).ToHaveValueAsync("0.1");
        await page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(page.GetByLabel("Moved up by")).ToHaveValueAsync("0");
    }

    private static async Task StepAsync(IPage page, string key, int times)
    {
        for (var i = 0; i < times; i++)
        {
            await page.Keyboard.PressAsync(key);
        }
    }

    /// <summary>Waits until what is worked out in the background stands there: controls come with it.</summary>
    private static async Task SettledAsync(IPage page)
    {
        // Every page begins with the focus on its title, for who hears it read.
        await Assertions.Expect(page.Locator("h1")).ToBeFocusedAsync();
        await Assertions.Expect(page.Locator("[role=status]").Filter(new() { HasTextRegex = new("…$") })).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        await page.WaitForLoadStateAsync(LoadState.NetworkIdle);
    }
}
