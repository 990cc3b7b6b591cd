using System.IO.Compression;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SectionScan.Porting.Documents;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.Tests.Hosting;

namespace SectionScan.Workbench.Tests.Journeys;

[Collection(SharedWorkbench.Name)]
public class JourneyTests(RunningWorkbench workbench)
{
    [Fact]
    public async Task From_the_photo_to_measures_with_uncertainty_and_a_drawing_to_take_away()
    {
        var page = await workbench.PageAsync();
        var id = await workbench.BeginAsync(page, "Journey");
        await workbench.GoAsync(page, $"/job/{id}/capture");

        await page.SetInputFilesAsync("#photos", SamplePhotos.PhotoPath("p01"));
        await page.GetByText("Good photo.").WaitForAsync();
        await page.GetByLabel("Shows").FillAsync("exemplar");
        await page.GetByLabel("Slice thickness, mm").FillAsync("6");
        await page.GetByLabel("Slice thickness, mm").PressAsync("Tab");
        await page.GetByRole(AriaRole.Link, new() { Name = "Next: digitise" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Digitise 1 photo" }).ClickAsync();
        await page.GetByText("All photos are digitised: 4 sections.").WaitForAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "exemplar, station 3" }).ClickAsync();
        await page.GetByText("exemplar, station 3: measures").WaitForAsync();
        Assert.Equal(8, await page.Locator(".view polygon").CountAsync());
        Assert.Matches(@"\d+\.\d ± \d\.\d mm²", await page.GetByRole(AriaRole.Row, new() { Name = "Area" }).InnerTextAsync());

        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "section document" }).ClickAsync());
        var document = SectionDocumentFormat.Read(await File.ReadAllTextAsync(await download.PathAsync()), "download").ValueOrThrow();
        Assert.Equal(3, document.Section.Station);
        Assert.Equal("6", document.Settings["thickness"]);

        var all = await page.RunAndWaitForDownloadAsync(() => page.GetByText("Download all sections").ClickAsync());
        await using var zip = await ZipFile.OpenReadAsync(await all.PathAsync());
        Assert.Equal(16, zip.Entries.Count);
    }

    [Fact]
    public async Task What_was_typed_is_there_after_a_reload_and_can_be_taken_back_and_done_again()
    {
        var page = await workbench.PageAsync();
        var id = await workbench.BeginAsync(page, "Reload");
        await workbench.GoAsync(page, $"/job/{id}/prepare");
        var across = page.GetByLabel("Bar across");
        await across.FillAsync("199.6");
        await across.PressAsync("Tab");
        await page.GetByLabel("Bar up").FillAsync("150.3");
        await page.GetByLabel("Bar up").PressAsync("Tab");
        await page.GetByText("Across −0.20 %, up +0.20 %").WaitForAsync();

        await page.ReloadAsync();
        await page.WaitForSelectorAsync("[data-interactive=true]");
        Assert.Equal("199.6", await page.GetByLabel("Bar across").InputValueAsync());

        await page.Locator("h1").ClickAsync();
        await page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(page.GetByLabel("Bar up")).ToHaveValueAsync("");
        await page.GetByRole(AriaRole.Button, new() { Name = "Redo" }).ClickAsync();
        await Assertions.Expect(page.GetByLabel("Bar up")).ToHaveValueAsync("150.3");
    }

    [Fact]
    public async Task A_photo_is_digitised_again_when_its_thickness_was_wrong()
    {
        var page = await workbench.PageAsync();
        var id = await workbench.BeginAsync(page, "Again");
        await workbench.GoAsync(page, $"/job/{id}/capture");
        await page.SetInputFilesAsync("#photos", SamplePhotos.PhotoPath("p01"));
        await page.GetByText("Good photo.").WaitForAsync();
        await workbench.GoAsync(page, $"/job/{id}/digitise");
        await page.GetByRole(AriaRole.Button, new() { Name = "Digitise 1 photo" }).ClickAsync();
        await page.GetByText("All photos are digitised: 4 sections.").WaitForAsync();

        // Pages speak of fields, not of options of the command line.
        Assert.DoesNotContain("--", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);

        await workbench.GoAsync(page, $"/job/{id}/capture");
        await page.GetByLabel("Slice thickness, mm").FillAsync("6");
        await page.GetByLabel("Slice thickness, mm").PressAsync("Tab");
        await workbench.GoAsync(page, $"/job/{id}/digitise");
        await page.GetByText("were changed after this photo was digitised").WaitForAsync();
        var before = await page.GetByRole(AriaRole.Row, new() { Name = "Area" }).InnerTextAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Digitise this photo again" }).ClickAsync();
        await page.GetByText("were changed after this photo was digitised").WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        Assert.NotEqual(before, await page.GetByRole(AriaRole.Row, new() { Name = "Area" }).InnerTextAsync());
    }

    [Fact]
    public async Task Sections_are_kept_given_away_and_taken_in_again()
    {
        var page = await workbench.PageAsync($"/job/{workbench.Digitised}/archive");
        var keep = page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Keep [1-9]\\d* sections$") });
        var count = (await keep.InnerTextAsync()).Split(' ')[1];
        await keep.ClickAsync();
        await page.GetByText("Kept:").WaitForAsync();
        await workbench.GoAsync(page, "/library");
        var kept = int.Parse(count, System.Globalization.CultureInfo.InvariantCulture) + RunningWorkbench.KeptBefore;
        await Assertions.Expect(page.Locator(".shelf svg")).ToHaveCountAsync(kept);
        await page.GetByText("Take sections in from another shop").ClickAsync();

        var all = await page.RunAndWaitForDownloadAsync(() => page.GetByText("Export the whole library").ClickAsync());
        var file = Path.Combine(workbench.Folder, "given-away.zip");
        await all.SaveAsAsync(file);
        await page.SetInputFilesAsync("#archive-file", file);

        await page.GetByText($"0 sections added; {kept} are here already.").WaitForAsync();
        Assert.Empty(Directory.EnumerateFiles(workbench.Folder, "*.part"));
    }

    [Fact]
    public async Task A_section_of_the_library_is_compared_from_its_history()
    {
        var page = await workbench.PageAsync();
        var id = await workbench.BeginAsync(page, "From the library");
        await page.GetByRole(AriaRole.Link, new() { Name = "Library" }).ClickAsync();
        await page.GetByLabel("Words").FillAsync(RunningWorkbench.KeptHead);
        await page.GetByRole(AriaRole.Button, new() { Name = "Search" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new($"^History of {RunningWorkbench.KeptHead}.*station 4") }).ClickAsync();
        await Assertions.Expect(page.GetByLabel("Compare in the job")).ToHaveValueAsync(id);
        await page.GetByRole(AriaRole.Button, new() { Name = "Compare revision 1" }).ClickAsync();

        await page.GetByRole(AriaRole.Heading, new() { Name = "Compare", Exact = true }).WaitForAsync();
        await Assertions.Expect(page.GetByLabel("Reference")).ToHaveValueAsync(new Regex("^library:\\d+@1$"));
        await page.GetByLabel("Laid on it").SelectOptionAsync(new SelectOptionValue { Label = await page.GetByLabel("Laid on it").Locator("option", new() { HasTextString = RunningWorkbench.KeptHead }).First.InnerTextAsync() });
        await page.GetByText("Nowhere is the difference larger than its uncertainty.").WaitForAsync();
    }

    [Fact]
    public async Task A_place_is_picked_under_the_magnifier()
    {
        var page = await workbench.PageAsync($"/job/{workbench.Digitised}/digitise");
        await page.GetByText("Scale without the printed target").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Two points" }).ClickAsync();
        var view = page.Locator(".view");
        await page.WaitForSelectorAsync(".view[data-tool]");
        await view.HoverAsync(new() { Position = new() { X = 300, Y = 250 } });
        await page.Locator(".magnifier").WaitForAsync();
        Assert.True(await page.EvaluateAsync<bool>(
            "() => { const c = document.querySelector('.magnifier'); return new Set(c.getContext('2d').getImageData(0, 0, c.width, c.height).data).size > 20; }"));
        await view.ClickAsync(new() { Position = new() { X = 300, Y = 250 } });
        await page.GetByText("Click the second point.").WaitForAsync();
        await view.ClickAsync(new() { Position = new() { X = 500, Y = 250 } });
        await page.ScreenshotAsync(new() { Path = Path.Combine(AppContext.BaseDirectory, "pictures", "magnifier.png") });
        await page.GetByLabel("Distance, mm").FillAsync("nothing");
        await page.GetByRole(AriaRole.Button, new() { Name = "Use this scale" }).ClickAsync();

        await page.GetByText("\"nothing\" is not a number").WaitForAsync();
    }

    [Fact]
    public async Task Two_windows_see_each_other()
    {
        var one = await workbench.PageAsync();
        var id = await workbench.BeginAsync(one, "Two windows");
        await workbench.GoAsync(one, $"/job/{id}/capture");
        var other = await workbench.PageAsync($"/job/{id}/capture");

        await one.SetInputFilesAsync("#photos", SamplePhotos.PhotoPath("c02"));
        await other.GetByRole(AriaRole.Heading, new() { Name = "c02.jpg" }).WaitForAsync();
        await other.GetByRole(AriaRole.Button, new() { Name = "Remove c02.jpg" }).ClickAsync();
        await one.GetByText("No photo yet.").WaitForAsync();

        await one.GetByText("inch", new() { Exact = true }).ClickAsync();
        await Assertions.Expect(other.GetByLabel("inch")).ToBeCheckedAsync();
        await other.GetByText("mm", new() { Exact = true }).ClickAsync();
        await Assertions.Expect(one.GetByLabel("mm", new() { Exact = true })).ToBeCheckedAsync();
    }
}
