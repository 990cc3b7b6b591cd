using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>The first page: begin a job, go on with one, try the sample.</summary>
public sealed partial class StartViewModel(JobDesk desk) : ObservableObject
{
    private const int MostShown = 50;

    /// <summary>Name of the job to begin.</summary>
    [ObservableProperty]
    [NotifyCanExecuteChangedFor(nameof(BeginCommand))]
    public partial string NewName { get; set; } = string.Empty;

    /// <summary>The id of the job that was begun; null while there is none.</summary>
    [ObservableProperty]
    public partial string? Begun { get; private set; }

    /// <summary>Why it could not be begun, or null.</summary>
    [ObservableProperty]
    public partial Problem? Problem { get; private set; }

    /// <summary>Where the jobs are kept.</summary>
    public string FolderPath => desk.FolderPath;

    /// <summary>The jobs, the one changed last first: id, name, what stands.</summary>
    public IReadOnlyList<ListedJob> Jobs() => [.. desk.Ids().Take(MostShown).Select(id => desk.Look(id).TryGet(out var job, out var problem)
        ? new ListedJob(id, job.Name, job.Photos.Count, job.Sections.Count, null)
        : new ListedJob(id, id, 0, 0, problem))];

    private bool CanBegin => !string.IsNullOrWhiteSpace(NewName);

    [RelayCommand(CanExecute = nameof(CanBegin))]
    private void Begin() => Take(desk.Begin(NewName));

    [RelayCommand]
    private async Task BeginSampleAsync(CancellationToken stop) => Take(await desk.BeginSampleAsync(stop));

    private void Take(Result<string> begun)
    {
        _ = begun.TryGet(out var id, out var problem);
        (Begun, Problem) = (id, problem);
    }

    /// <summary>A job in the list.</summary>
    /// <param name="Id">Its id.</param>
    /// <param name="Name">Its name.</param>
    /// <param name="Photos">How many photos it holds.</param>
    /// <param name="Sections">How many sections it holds.</param>
    /// <param name="Problem">Why it cannot be opened, or null.</param>
    public sealed record ListedJob(string Id, string Name, int Photos, int Sections, Problem? Problem);
}
