using System.Globalization;
using Microsoft.Playwright;
using SectionScan.Workbench.Hosting;
using SectionScan.Workbench.Tests.Hosting;

namespace SectionScan.Workbench.Tests.Journeys;

/// <summary>Nothing is lost when the page's connection is, nor when the workbench itself is ended and started again.</summary>
[Collection(SharedWorkbench.Name)]
public class ConnectionTests(RunningWorkbench workbench)
{
    [Fact]
    public async Task What_is_typed_while_the_connection_is_gone_is_told_when_it_comes_back_by_itself()
    {
        var page = await workbench.PageAsync();
        var lines = new List<IWebSocketRoute>();
        var isCut = false;
        await page.RouteWebSocketAsync("**/_blazor**", line =>
        {
            if (isCut)
            {
                _ = line.CloseAsync();
                return;
            }

            line.ConnectToServer();
            lines.Add(line);
        });
        await page.RouteAsync("**/_blazor/**", route => isCut ? route.AbortAsync() : route.ContinueAsync());
        var id = await workbench.BeginAsync(page, "Cut off");
        await workbench.GoAsync(page, $"/job/{id}/prepare");
        var (across, up) = (page.GetByLabel("Bar across"), page.GetByLabel("Bar up"));
        await across.FillAsync("199.6");
        await across.PressAsync("Tab");
        await Assertions.Expect(page.Locator("[data-key=undo]")).ToBeEnabledAsync(new() { Timeout = 60_000 });
        await up.FillAsync("150.6");
        await up.PressAsync("Tab");
        await page.GetByText("Across −0.20 %, up +0.40 %").WaitForAsync();

        isCut = true;
        await Task.WhenAll(lines.Select(line => line.CloseAsync()));
        var notice = page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "Connection lost" });
        await Assertions.Expect(notice).ToBeVisibleAsync();
        await Assertions.Expect(notice).ToContainTextAsync("Trying again every second");
        await up.FillAsync("150.3");
        await up.PressAsync("Tab");
        await JobName(page).FillAsync("Named without a line");
        await page.ScreenshotAsync(new() { Path = Path.Combine(AppContext.BaseDirectory, "pictures", "connection-lost.png") });
        await Assertions.Expect(page.GetByText("The workbench does not answer.")).ToBeVisibleAsync(new() { Timeout = 60_000 });

        isCut = false;
        await Assertions.Expect(notice).ToBeHiddenAsync(new() { Timeout = 60_000 });
        await page.GetByText("Across −0.20 %, up +0.20 %").WaitForAsync();

        // What was begun and not yet entered is still there, and is entered as ever.
        await Assertions.Expect(JobName(page)).ToHaveValueAsync("Named without a line");
        await JobName(page).PressAsync("Tab");
        await Assertions.Expect(page.Locator("[data-key=undo]")).ToHaveAttributeAsync("title", "Take back: Rename the job");
        await page.ReloadAsync();
        await page.WaitForSelectorAsync("[data-interactive=true]");
        await Assertions.Expect(up).ToHaveValueAsync("150.3");
        await Assertions.Expect(JobName(page)).ToHaveValueAsync("Named without a line");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_page_comes_back_with_its_state_when_the_workbench_was_ended_and_started_again()
    {
        var folder = Directory.CreateTempSubdirectory("sectionscan-restart-").FullName;
        var page = await workbench.PageAsync();
        var port = 0;
        try
        {
            string address;
            await using (var first = await StartAsync(folder, null))
            {
                port = first.Address.Port;
                await page.GotoAsync(first.Address.ToString());
                await page.WaitForSelectorAsync("[data-interactive=true]");
                await page.GetByLabel("Name of the job").FillAsync("Restarted");
                await page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
                await page.GetByRole(AriaRole.Heading, new() { Name = "Prepare" }).WaitForAsync();
                await page.GotoAsync(page.Url.TrimEnd('/') + "/prepare");
                await page.WaitForSelectorAsync("[data-interactive=true]");
                await page.GetByLabel("Bar across").FillAsync("199.6");
                await page.GetByLabel("Bar across").PressAsync("Tab");
                await Assertions.Expect(page.Locator("[data-key=undo]")).ToBeEnabledAsync(new() { Timeout = 60_000 });
                await page.GetByLabel("Bar up").FillAsync("150.3");
                await page.GetByLabel("Bar up").PressAsync("Tab");
                await page.GetByText("Across −0.20 %, up +0.20 %").WaitForAsync();
                await page.GetByText("inch", new() { Exact = true }).ClickAsync();
                await Assertions.Expect(page.GetByLabel("Bar across")).ToHaveValueAsync((199.6 / 25.4).ToString("0.#####", CultureInfo.InvariantCulture));
                address = page.Url;
            }

            await Assertions.Expect(page.GetByText("Connection lost")).ToBeVisibleAsync(new() { Timeout = 60_000 });
            await page.GetByLabel("Bar up").FillAsync("5.9");

            await using var second = await StartAsync(folder, port);
            await Assertions.Expect(page.GetByText("Connection lost")).ToBeHiddenAsync(new() { Timeout = 60_000 });
            await page.WaitForSelectorAsync("[data-interactive=true]");
            Assert.Equal(address, page.Url);
            await Assertions.Expect(JobName(page)).ToHaveValueAsync("Restarted");
            await Assertions.Expect(page.GetByLabel("inch")).ToBeCheckedAsync();
            await Assertions.Expect(page.GetByLabel("Bar across")).ToHaveValueAsync((199.6 / 25.4).ToString("0.#####", CultureInfo.InvariantCulture));

            // What was typed into the page while nothing answered is entered by the page that came back.
            await Assertions.Expect(page.GetByLabel("Bar up")).ToHaveValueAsync("5.9");
            await Assertions.Expect(page.Locator("[data-key=undo]")).ToBeEnabledAsync();
            await page.GetByText("Across −0.20 %, up −0.09 %").WaitForAsync();
        }
        finally
        {
            await page.Context.CloseAsync();
            Directory.Delete(folder, recursive: true);
        }
    }

    private static ILocator JobName(IPage page) => page.GetByRole(AriaRole.Textbox, new() { Name = "Job", Exact = true });

    private static async Task<WorkbenchHost> StartAsync(string folder, int? port)
    {
        // The system may hold a port for a moment after its server ended.
        for (var i = 0; ; i++)
        {
            var started = await WorkbenchHost.StartAsync(new(folder, Path.Combine(folder, "library.db"), port ?? 0, [], "sectionscan test", TimeProvider.System));
            if (started.TryGet(out var host, out _) || i == 20)
            {
                return host ?? started.ValueOrThrow();
            }

            await Task.Delay(250);
        }
    }
}
