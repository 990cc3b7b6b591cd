using Microsoft.Playwright;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Walls;
using SectionScan.Testing.Repository;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.Hosting;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.Tests.Hosting;

/// <summary>A running workbench on a folder of its own, with one job whose photos are digitised, and a browser.</summary>
public sealed class RunningWorkbench : IAsyncLifetime
{
    private static readonly PortWalls Walls = new(
        [(3, new("oil drain", new KeepOutCircle(new(24, 4), 3.5), 0.3, KeepOut.UsualLimitMm, KeepOutSource.Drawing, string.Empty))],
        []);

    /// <summary>The head whose station 4 lies in the library before any test, corrected once.</summary>
    public const string KeptHead = "Bramble 480 twin, second";

    /// <summary>How many sections lie in the library before any test.</summary>
    public const int KeptBefore = 1;

    private IPlaywright? playwright;
    private IBrowser? browser;
    private WorkbenchHost? host;

    public string Folder { get; } = Directory.CreateTempSubdirectory("sectionscan-workbench-").FullName;

    public Uri Address => host!.Address;

    /// <summary>The id of the job that is digitised and decided: p01 (exemplar), p04 (as cast) and p06 (finished).</summary>
    public string Digitised { get; private set; } = "";

    public async Task InitializeAsync()
    {
        Digitised = await PrepareJobAsync();
        host = (await WorkbenchHost.StartAsync(new(
            Folder, Path.Combine(Folder, "library.db"), null, [RepositoryFolder.Root], "sectionscan test", TimeProvider.System))).ValueOrThrow();
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = "/usr/bin/chromium", Args = ["--no-sandbox"] });
    }

    public async Task<IPage> PageAsync(string path = "/", int width = 1440, int height = 900, ColorScheme scheme = ColorScheme.Light)
    {
        var context = await browser!.NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = height },
            ColorScheme = scheme,
            ReducedMotion = ReducedMotion.Reduce,
            AcceptDownloads = true,
        });
        context.SetDefaultTimeout(120_000);
        var page = await context.NewPageAsync();
        await GoAsync(page, path);
        return page;
    }

    /// <summary>Goes to an address and waits until the page answers.</summary>
    public async Task GoAsync(IPage page, string path)
    {
        await page.GotoAsync(new Uri(Address, path).ToString());
        await page.WaitForSelectorAsync("[data-interactive=true]");
    }

    /// <summary>A new job's id, begun in a page.</summary>
    public async Task<string> BeginAsync(IPage page, string name)
    {
        await GoAsync(page, "/");
        await page.GetByLabel("Name of the job").FillAsync(name);
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Prepare" }).WaitForAsync();
        return new Uri(page.Url).Segments[^1].TrimEnd('/');
    }

    public async Task DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.CloseAsync();
        }

        playwright?.Dispose();
        if (host is not null)
        {
            await host.DisposeAsync();
        }

        Directory.Delete(Folder, recursive: true);
    }

    private async Task<string> PrepareJobAsync()
    {
        var desk = new JobDesk(JobsFolder.Open(Folder).ValueOrThrow(), "none", [], "sectionscan test", TimeProvider.System);
        var id = desk.Begin("Digitised").ValueOrThrow();
        var live = desk.Open(id).ValueOrThrow();
        live.Do("Set up", job => job with { Head = "Bramble 480 twin", CheckBarAcrossMm = 200, CheckBarUpMm = 150 });
        foreach (var (sample, stage, thickness) in new[] { ("p01", "exemplar", 6.0), ("p04", "as cast", 6.0), ("p06", "finished", 5.0) })
        {
            await using var content = File.OpenRead(SamplePhotos.PhotoPath(sample));
            var photo = (await live.TakePhotoAsync(content, sample + ".jpg", CancellationToken.None)).ValueOrThrow();
            live.Do("Set up", job => job.With(photo with { Stage = stage, ThicknessMm = thickness }));
        }

        await live.Digitising.StartAsync([.. live.Job.Photos.Select(photo => photo.Id)]);
        var sections = live.Job.Sections;
        live.Do("Set up", job => job with
        {
            Target = new() { Own = JobPorts.KeyOf("as cast"), Reference = JobPorts.KeyOf("exemplar") },
            WallsFile = JobWalls.Keep(live.Folder, Walls).ValueOrThrow(),
            PortData = PortData.From(JobDocumentFormat.Read(File.ReadAllText(Path.Combine(RepositoryFolder.Root, "sample-images", "as-cast.job.json")), "job").ValueOrThrow()),
            Proof = new() { Finished = JobPorts.KeyOf("finished") },
            Comparison = new(sections.Single(each => job.NameOf(each) == "exemplar, station 4").Id, sections.Single(each => job.NameOf(each) == "finished, station 4").Id),
        });
        KeepOne(live, sections.Single(each => Name(each) == "exemplar, station 4"));
        return id;

        string Name(JobSection section) => live.Job.NameOf(section);
    }

    private void KeepOne(LiveJob live, JobSection section)
    {
        var document = live.Measured(section).ValueOrThrow().Document;
        using var library = SectionLibrary.Open(Path.Combine(Folder, "library.db"), TimeProvider.System).ValueOrThrow();
        var entry = new EntryContent(new(KeptHead, PortName.Parse("intake 1").ValueOrThrow(), 4, "exemplar"), SectionDocumentFormat.Write(document), "", [], []);
        var kept = library.Add(entry).ValueOrThrow();
        library.Revise(kept.Id, entry with { Notes = "Proven on the bench" }, "note added").ValueOrThrow();
    }
}
