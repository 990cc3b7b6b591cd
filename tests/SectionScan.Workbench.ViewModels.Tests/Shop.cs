using SectionScan.Jobs.PortingJobs;
using SectionScan.Testing.Repository;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.ViewModels.Desk;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests;

/// <summary>A folder of jobs that is gone after the test, and windows on them.</summary>
internal sealed class Shop : IDisposable
{
    private readonly List<JobViewModel> windows = [];

    public Shop()
    {
        Folder = Directory.CreateTempSubdirectory("sectionscan-shop-").FullName;
        Desk = NewDesk();
        Units = new(Folder);
    }

    public string Folder { get; }

    public JobDesk Desk { get; }

    public UnitChoice Units { get; }

    /// <summary>A desk as another run of the program would have it.</summary>
    public JobDesk NewDesk() => new(
        JobsFolder.Open(Folder).ValueOrThrow(), Path.Combine(Folder, "library.db"), [RepositoryFolder.Root], "sectionscan test", TimeProvider.System);

    public JobViewModel Window(string id)
    {
        var window = new JobViewModel(Desk, Units);
        windows.Add(window);
        window.Open(id);
        return window;
    }

    public JobViewModel WindowOnNewJob() => Window(Desk.Begin("Trial").ValueOrThrow());

    public static async Task<JobPhoto> TakeAsync(JobViewModel window, string sample)
    {
        await using var content = File.OpenRead(SamplePhotos.PhotoPath(sample));
        return (await window.Live!.TakePhotoAsync(content, sample + ".jpg", CancellationToken.None)).ValueOrThrow();
    }

    public void Dispose()
    {
        windows.ForEach(window => window.Dispose());
        Directory.Delete(Folder, recursive: true);
    }
}
