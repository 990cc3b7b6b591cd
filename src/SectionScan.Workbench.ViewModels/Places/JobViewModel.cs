using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;
using SectionScan.Workbench.ViewModels.Way;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>What one window shows of a job, wherever it is on the way: the way itself, undo and redo, the units.</summary>
public sealed partial class JobViewModel : ObservableObject, IDisposable
{
    private readonly JobDesk desk;

    /// <summary>Makes it, without a job yet.</summary>
    public JobViewModel(JobDesk desk, UnitChoice units)
    {
        ArgumentNullException.ThrowIfNull(units);
        this.desk = desk;
        Units = units;
        units.Changed += OnOutsideChange;
    }

    /// <summary>Millimetres or inches.</summary>
    public UnitChoice Units { get; }

    /// <summary>The open job, or null.</summary>
    public LiveJob? Live { get; private set; }

    /// <summary>The job as it stands.</summary>
    /// <exception cref="InvalidOperationException">No job is open.</exception>
    public PortingJob Job => (Live ?? throw new InvalidOperationException("No job is open.")).Job;

    /// <summary>Why the job cannot be opened, or null.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>Why the last change was not kept, or null.</summary>
    public Problem? SaveProblem => Live?.SaveProblem;

    /// <summary>The way through the job.</summary>
    public IReadOnlyList<WayStep> Way => Live is null ? [] : WayStep.Of(Job);

    /// <summary>What undo takes back, or null.</summary>
    public string? NextUndo => Live?.NextUndo;

    /// <summary>What redo does again, or null.</summary>
    public string? NextRedo => Live?.NextRedo;

    /// <summary>Opens a job in this window.</summary>
    public void Open(string id)
    {
        if (Live?.Id == id)
        {
            return;
        }

        Leave();
        if (desk.Open(id).TryGet(out var live, out var problem))
        {
            Live = live;
            live.Changed += OnOutsideChange;
        }

        Problem = problem;
        OnPropertyChanged(string.Empty);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Leave();
        Units.Changed -= OnOutsideChange;
    }

    private bool CanUndo => NextUndo is not null;

    private bool CanRedo => NextRedo is not null;

    private bool IsOpen => Live is not null;

    [RelayCommand(CanExecute = nameof(CanUndo))]
    private void Undo() => Live?.Undo();

    [RelayCommand(CanExecute = nameof(CanRedo))]
    private void Redo() => Live?.Redo();

    [RelayCommand(CanExecute = nameof(IsOpen))]
    private void Rename(string? name)
    {
        if (!string.IsNullOrWhiteSpace(name))
        {
            Live?.Do("Rename the job", job => job.Name == name.Trim() ? job : job with { Name = name.Trim() });
        }
    }

    [RelayCommand]
    private void ShowInches(bool isInch) => Units.Set(isInch);

    private void Leave()
    {
        if (Live is { } live)
        {
            live.Changed -= OnOutsideChange;
            Live = null;
        }
    }

    private void OnOutsideChange(object? sender, EventArgs e)
    {
        UndoCommand.NotifyCanExecuteChanged();
        RedoCommand.NotifyCanExecuteChanged();
        OnPropertyChanged(string.Empty);
    }
}
