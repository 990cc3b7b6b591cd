using System.Globalization;
using Microsoft.Playwright;
using SectionScan.Workbench.Tests.Hosting;

namespace SectionScan.Workbench.Tests.Journeys;

[Collection(SharedWorkbench.Name)]
public class CompareHandTests(RunningWorkbench workbench)
{
    [Fact]
    public async Task A_section_is_moved_and_turned_over_the_reference_by_mouse_and_keyboard_and_taken_back()
    {
        var page = await workbench.PageAsync($"/job/{workbench.Digitised}/compare");
        var right = page.GetByLabel("Moved right by");
        var turned = page.GetByLabel("Turned left by");
        await Assertions.Expect(right).ToHaveValueAsync("0");
        var most = page.Locator(".numbers dd").First;
        var before = await most.InnerTextAsync();

        var (x, y) = await MiddleAsync(page.Locator("[data-hand=move]"));
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(x + 20, y, new() { Steps = 4 });

        // Numbers follow while the button is still held, and nothing is a step yet.
        await Assertions.Expect(right).Not.ToHaveValueAsync("0");
        await Assertions.Expect(most).Not.ToHaveTextAsync(before);
        await Assertions.Expect(page.Locator("[data-key=undo]")).Not.ToHaveAttributeAsync("title", "Take back: Align by hand");
        await page.Mouse.UpAsync();
        await Assertions.Expect(page.Locator("[data-key=undo]")).ToHaveAttributeAsync("title", "Take back: Align by hand");

        (x, y) = await MiddleAsync(page.Locator("[data-hand=turn]"));
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(x, y - 30, new() { Steps = 4 });
        await page.Mouse.UpAsync();
        await Assertions.Expect(turned).Not.ToHaveValueAsync("0");
        Assert.True(await NumberAsync(turned) > 0);
        await page.GetByText("Aligned by hand: x +").WaitForAsync();

        var moved = await NumberAsync(right);
        await page.Locator(".hand-board").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await Assertions.Expect(right).ToHaveValueAsync((moved + 1.1).ToString("0.###", CultureInfo.InvariantCulture));
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("h1").ClickAsync();
        await page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(right).ToHaveValueAsync(moved.ToString("0.###", CultureInfo.InvariantCulture));

        await page.GetByRole(AriaRole.Button, new() { Name = "Back to the alignment chosen" }).ClickAsync();
        await Assertions.Expect(right).ToHaveValueAsync("0");
        await Assertions.Expect(most).ToHaveTextAsync(before);
    }

    [Fact]
    public async Task A_finger_on_the_handle_moves_it_too()
    {
        var page = await workbench.PageAsync($"/job/{workbench.Digitised}/compare", 390, 844);
        var right = page.GetByLabel("Moved right by");
        var (x, y) = await MiddleAsync(page.Locator("[data-hand=move]"));
        var devtools = await page.Context.NewCDPSessionAsync(page);
        async Task TouchAsync(string kind, float? at) => await devtools.SendAsync("Input.dispatchTouchEvent", new()
        {
            ["type"] = kind,
            ["touchPoints"] = at is { } px ? new[] { new Dictionary<string, object> { ["x"] = px, ["y"] = y } } : [],
        });

        await TouchAsync("touchStart", x);
        await TouchAsync("touchMove", x - 6);
        await TouchAsync("touchMove", x - 12);
        await TouchAsync("touchEnd", null);

        await page.GetByText("Aligned by hand: x −").WaitForAsync();
        Assert.True(await NumberAsync(right) < 0);
        await page.GetByRole(AriaRole.Button, new() { Name = "Back to the alignment chosen" }).ClickAsync();
        await Assertions.Expect(right).ToHaveValueAsync("0");
    }

    [Fact]
    public async Task Two_ports_stand_beside_each_other_at_one_scale_with_their_differences()
    {
        var page = await workbench.PageAsync($"/job/{workbench.Digitised}/compare");

        await page.GetByLabel("First port").SelectOptionAsync("stage:as cast");
        await page.GetByLabel("Second port").SelectOptionAsync("stage:exemplar");

        var table = page.GetByRole(AriaRole.Table, new() { Name = "Second less first" });
        await table.WaitForAsync();
        Assert.Matches(@"\+\d+\.?\d* ± \d+\.?\d* mm²", await table.GetByRole(AriaRole.Row, new() { Name = "Area" }).First.InnerTextAsync());
        var boxes = await page.Locator(".beside >> nth=1").Locator("svg").EvaluateAllAsync<string[]>("all => all.map(each => each.getAttribute('viewBox'))");
        Assert.True(boxes.Length >= 4);
        Assert.Single(boxes.Distinct());
    }

    private static async Task<(float X, float Y)> MiddleAsync(ILocator handle)
    {
        await handle.ScrollIntoViewIfNeededAsync();
        var box = (await handle.BoundingBoxAsync())!;
        return (box.X + (box.Width / 2), box.Y + (box.Height / 2));
    }

    private static async Task<double> NumberAsync(ILocator field) => double.Parse(await field.InputValueAsync(), CultureInfo.InvariantCulture);
}
