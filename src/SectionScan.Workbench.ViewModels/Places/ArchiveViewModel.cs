using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Archive.Entries;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Libraries;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>Archive: the job's sections into the reference section library.</summary>
public sealed partial class ArchiveViewModel(JobViewModel window, JobDesk desk) : PlaceViewModel(window)
{
    /// <summary>What was added last.</summary>
    [ObservableProperty]
    public partial IReadOnlyList<EntrySummary> Added { get; private set; } = [];

    /// <summary>What could not be added, and why.</summary>
    [ObservableProperty]
    public partial IReadOnlyList<Problem> Failed { get; private set; } = [];

    /// <summary>Notes that are kept with each section.</summary>
    [ObservableProperty]
    public partial string Notes { get; set; } = string.Empty;

    /// <summary>The sections that have a station and so a place in the library.</summary>
    public IReadOnlyList<JobSection> Ready => ReadyIn(Window.Job);

    /// <summary>The sections without a station.</summary>
    public int WithoutStation => Window.Job.Sections.Count - Ready.Count;

    /// <summary>Tells the head.</summary>
    public void SetHead(string? head) => Window.Live?.Do("Name the head", job => job with { Head = (head ?? string.Empty).Trim() });

    /// <summary>Tells the port, in the library's words.</summary>
    public void SetPort(string? port)
    {
        if (!PortName.Parse(port ?? string.Empty).TryGet(out var named, out var problem))
        {
            Failed = [problem];
            return;
        }

        Failed = [];
        Window.Live?.Do("Name the port", job => job with { Port = named.ToString() });
    }

    /// <inheritdoc/>
    protected override void OnOtherJob() => (Added, Failed, Notes) = ([], [], string.Empty);

    private static IReadOnlyList<JobSection> ReadyIn(PortingJob job) => [.. job.Sections.Where(each => each.Station is not null)];

    [RelayCommand]
    private async Task AddAllAsync()
    {
        if (Window.Live is not { } live)
        {
            return;
        }

        var (job, notes) = (live.Job, Notes.Trim());
        var (added, failed) = await Task.Run(() => Add(live, job, notes));
        desk.TellLibraryChanged();
        if (ReferenceEquals(live, Window.Live))
        {
            (Added, Failed) = (added, failed);
        }
    }

    private (List<EntrySummary> Added, List<Problem> Failed) Add(LiveJob live, PortingJob job, string notes)
    {
        var added = new List<EntrySummary>();
        var failed = new List<Problem>();
        var run = LibrarySource.Use<int>(desk.LibraryPath, desk.Time, library =>
        {
            foreach (var section in ReadyIn(job))
            {
                var entry = live.Measured(section).Then(read => PortName.Parse(job.Port).Then(port => library.Add(new(
                    new(job.Head, port, section.Station!.Value, job.StageOf(section)),
                    SectionDocumentFormat.Write(read.Document, MeasureUnits.ForDocument(read.Measures)), notes, [], []))));
                if (entry.TryGet(out var done, out var problem))
                {
                    added.Add(done);
                }
                else
                {
                    failed.Add(problem);
                }
            }

            return added.Count;
        });
        if (!run.TryGet(out _, out var unusable))
        {
            failed.Add(unusable);
        }

        return (added, failed);
    }
}
