using System.ComponentModel;
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

    /// <summary>A window on a desk as another run of the program would have it.</summary>
    public JobViewModel WindowLater(string id)
    {
        var window = new JobViewModel(NewDesk(), Units);
        windows.Add(window);
        window.Open(id);
        return window;
    }

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

    /// <summary>What a model shows once it shows it; told by the model, looked at when it tells.</summary>
    public static async Task<T> UntilAsync<T>(INotifyPropertyChanged model, Func<T?> look)
        where T : class
    {
        var shown = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        void Look(object? sender, PropertyChangedEventArgs e)
        {
            if (look() is { } value)
            {
                shown.TrySetResult(value);
            }
        }

        model.PropertyChanged += Look;
        try
        {
            Look(null, new(null));
            return await shown.Task.WaitAsync(TimeSpan.FromMinutes(2));
        }
        finally
        {
            model.PropertyChanged -= Look;
        }
    }

    public void Dispose()
    {
        windows.ForEach(window => window.Dispose());
        Directory.Delete(Folder, recursive: true);
    }
}
