using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Testing.Repository;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.ViewModels.Desk;
using SectionScan.Workbench.ViewModels.Places;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Jpeg;
using SixLabors.ImageSharp.Processing;

namespace SectionScan.Benchmarks;

/// <summary>How long a person waits at the workbench, measured on the built program in a real browser: the first view, a photo's outlines
/// on the screen beside the same photo by the command line, a slider's step at Decide. Medians of a few runs, with the slowest.</summary>
internal static class WorkbenchTimings
{
    private const int Runs = 5;

    /// <summary>Measures and prints.</summary>
    public static async Task<int> PrintAsync()
    {
        var folder = Directory.CreateTempSubdirectory("sectionscan-timings-").FullName;
        try
        {
            var id = await PrepareAsync(folder);
            var large = await PrepareLargeAsync(folder);
            using var playwright = await Playwright.CreateAsync();
            await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = "/usr/bin/chromium", Args = ["--no-sandbox"] });
            Tell("a slider's step at Decide, view model", await ViewModelStepsAsync(folder, id));
            var page = await browser.NewPageAsync(new() { ViewportSize = new() { Width = 1440, Height = 900 } });
            page.SetDefaultTimeout(60_000);
            await page.GotoAsync("about:blank");
            var (views, answers) = (new List<double>(), new List<double>());
            for (var i = 0; i < Runs; i++)
            {
                using var program = new Program(["open", "--folder", folder, "--no-browser", "--json"]);
                await page.GotoAsync((await program.AddressAsync()).ToString(), new() { WaitUntil = WaitUntilState.Commit });
                await page.GetByRole(AriaRole.Link, new() { Name = "Timings" }).WaitForAsync();
                views.Add(program.ElapsedMs);
                await page.WaitForSelectorAsync("[data-interactive=true]");
                answers.Add(program.ElapsedMs);

                // A page left open would come back by itself to the next program, in the middle of its timing.
                await page.GotoAsync("about:blank");
            }

            Tell("first view, the jobs in it, after the start of the program", views);
            Tell("the first view answers to the hand", answers);
            using var workbench = new Program(["open", "--folder", folder, "--no-browser", "--json"]);
            var address = await workbench.AddressAsync();
            Tell("a slider's step at Decide, seen in the browser", await BrowserStepsAsync(page, new(address, $"/job/{id}/decide")));
            var (byCommandLine, onScreen) = await DigitiseAsync(page, new(address, $"/job/{id}/digitise"), folder);
            Tell("digitise a 12-megapixel photo by the command line", byCommandLine);
            Tell("its outlines on the screen, from the press of the button", onScreen);
            Tell("a frame while a 24-megapixel photo is zoomed by the wheel", await ZoomAsync(page, new(address, $"/job/{large}/digitise")));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"beyond the command line: {Median(onScreen) - Median(byCommandLine):0} ms"));
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<string> PrepareAsync(string folder)
    {
        var desk = Desk(folder);
        var id = desk.Begin("Timings").ValueOrThrow();
        var live = desk.Open(id).ValueOrThrow();
        foreach (var (sample, stage) in new[] { ("p01", "exemplar"), ("p04", "as cast") })
        {
            await using var content = File.OpenRead(SamplePhotos.PhotoPath(sample));
            var photo = (await live.TakePhotoAsync(content, sample + ".jpg", CancellationToken.None)).ValueOrThrow();
            live.Do("Set up", job => job.With(photo with { Stage = stage, ThicknessMm = 6 }));
        }

        await live.Digitising.StartAsync([.. live.Job.Photos.Select(photo => photo.Id)]);
        live.Do("Set up", job => job with { Target = new() { Own = JobPorts.KeyOf("as cast"), Reference = JobPorts.KeyOf("exemplar") } });
        return id;
    }

    /// <summary>A job with the first sample photo made 24 megapixels large, digitised.</summary>
    private static async Task<string> PrepareLargeAsync(string folder)
    {
        var file = Path.Combine(folder, "large.jpg");
        using (var small = await Image.LoadAsync(SamplePhotos.PhotoPath("p01")))
        {
            var factor = Math.Sqrt(24e6 / ((double)small.Width * small.Height));
            small.Mutate(each => each.Resize((int)(small.Width * factor), (int)(small.Height * factor), KnownResamplers.Bicubic));
            await small.SaveAsJpegAsync(file, new JpegEncoder { Quality = 92 });
        }

        var desk = Desk(folder);
        var id = desk.Begin("Large").ValueOrThrow();
        var live = desk.Open(id).ValueOrThrow();
        await using var content = File.OpenRead(file);
        var photo = (await live.TakePhotoAsync(content, "large.jpg", CancellationToken.None)).ValueOrThrow();
        live.Do("Set up", job => job.With(photo with { Stage = "exemplar", ThicknessMm = 6 }));
        await live.Digitising.StartAsync([photo.Id]);
        return id;
    }

    private static JobDesk Desk(string folder) =>
        new(JobsFolder.Open(folder).ValueOrThrow(), "none", [RepositoryFolder.Root], "sectionscan timings", TimeProvider.System);

    private static async Task<List<double>> ViewModelStepsAsync(string folder, string id)
    {
        var desk = Desk(folder);
        using var window = new JobViewModel(desk, new(folder));
        window.Open(id);
        using var decide = new DecideViewModel(window, desk, new(desk));
        decide.Begin();
        await decide.Working;
        var times = new List<double>();
        for (var percent = 0; percent <= 100; percent += 5)
        {
            var watch = Stopwatch.StartNew();
            decide.TryAll(percent);
            await decide.Working;
            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        return times;
    }

    /// <summary>From the slider's event to the figure's other numbers, told by the page itself.</summary>
    private static async Task<List<double>> BrowserStepsAsync(IPage page, Uri address)
    {
        await page.GotoAsync(address.ToString());
        await page.WaitForSelectorAsync("[data-interactive=true]");
        await page.Locator(".figure").WaitForAsync();
        await page.GetByText("being worked out").First.WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        const string Step = """
            value => new Promise(done => {
              const slider = document.querySelector('.slider input'), figure = document.querySelector('.drawing-board');
              const begun = performance.now();
              const watch = new MutationObserver(() => { watch.disconnect(); requestAnimationFrame(() => done(performance.now() - begun)); });
              watch.observe(figure, { subtree: true, attributes: true, attributeFilter: ['aria-label', 'd'] });
              slider.value = value;
              slider.dispatchEvent(new Event('input', { bubbles: true }));
            })
            """;
        var times = new List<double>();
        for (var percent = 95; percent >= 5; percent -= 5)
        {
            times.Add(await page.EvaluateAsync<double>(Step, percent));
        }

        return times;
    }

    /// <summary>From frame to frame while the wheel turns once a frame: in from the whole photo until a pixel is as large as a finger nail, and
    /// out again. A frame that took longer than a sixtieth of a second was late.</summary>
    private static async Task<List<double>> ZoomAsync(IPage page, Uri address)
    {
        await page.GotoAsync(address.ToString());
        await page.WaitForSelectorAsync("[data-interactive=true]");
        await page.WaitForFunctionAsync("() => document.querySelector('.view').dataset.shown === 'at every size' && document.querySelector('.outline')");
        const string Zoom = """
            () => new Promise(done => {
              const view = document.querySelector('.view'), box = view.getBoundingClientRect(), place = document.querySelector('.outline').getBoundingClientRect();
              const times = [];
              let last = performance.now(), step = 0;
              const next = now => {
                if (step > 1) { times.push(now - last); }
                last = now;
                if (step === 160) { done(times); return; }
                view.dispatchEvent(new WheelEvent('wheel', { deltaY: step < 80 ? -45 : 45, clientX: place.left, clientY: place.top + place.height / 2, bubbles: true, cancelable: true }));
                step++;
                requestAnimationFrame(next);
              };
              requestAnimationFrame(next);
            })
            """;
        return [.. await page.EvaluateAsync<double[]>(Zoom)];
    }

    private static async Task<(List<double> ByCommandLine, List<double> OnScreen)> DigitiseAsync(IPage page, Uri address, string folder)
    {
        var (byCommandLine, onScreen) = (new List<double>(), new List<double>());
        for (var i = 0; i < Runs; i++)
        {
            using var program = new Program(["digitise", SamplePhotos.PhotoPath("p01"), "--thickness", "6", "--out", Path.Combine(folder, $"out-{i}")]);
            await program.EndAsync();
            byCommandLine.Add(program.ElapsedMs);
            await page.GotoAsync(address.ToString());
            await page.WaitForSelectorAsync("[data-interactive=true]");
            await page.Locator(".thumbs button").First.ClickAsync();
            await page.Locator(".outline").First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
            var watch = Stopwatch.StartNew();
            await page.GetByRole(AriaRole.Button, new() { Name = "Digitise this photo again" }).ClickAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Stop" }).WaitForAsync();
            await page.GetByText("All photos are digitised").WaitForAsync();
            await page.WaitForFunctionAsync("() => document.querySelector('.view').dataset.shown && document.querySelectorAll('.outline').length === 4");
            onScreen.Add(watch.Elapsed.TotalMilliseconds);
        }

        return (byCommandLine, onScreen);
    }

    private static void Tell(string what, List<double> times) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture, $"{what}: median {Median(times):0} ms, 95 of 100 within {times.Order().ElementAt((int)(0.95 * (times.Count - 1))):0}, least {times.Min():0}, most {times.Max():0}, of {times.Count}"));

    private static double Median(List<double> times) => times.Order().ElementAt(times.Count / 2);

    /// <summary>The built program as a person starts it.</summary>
    private sealed class Program : IDisposable
    {
        private readonly Stopwatch watch = Stopwatch.StartNew();
        private readonly Process process;

        public Program(IEnumerable<string> arguments) => process = Process.Start(new ProcessStartInfo(
            "dotnet", [Path.Combine(AppContext.BaseDirectory, "sectionscan.dll"), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;

        public double ElapsedMs => watch.Elapsed.TotalMilliseconds;

        /// <summary>Where the workbench says it is.</summary>
        public async Task<Uri> AddressAsync()
        {
            while (await process.StandardOutput.ReadLineAsync() is { } line)
            {
                if (line.IndexOf("http://127.0.0.1:", StringComparison.Ordinal) is >= 0 and var at)
                {
                    return new(line[at..line.IndexOf('"', at)]);
                }
            }

            throw new InvalidOperationException("The workbench did not start.");
        }

        public async Task EndAsync()
        {
            await Task.WhenAll(process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
            await process.WaitForExitAsync();
            watch.Stop();
        }

        public void Dispose()
        {
            if (!process.HasExited)
            {
                process.Kill();
                process.WaitForExit();
            }

            process.Dispose();
        }
    }
}
