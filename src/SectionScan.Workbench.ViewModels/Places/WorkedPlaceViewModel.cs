namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>A place that shows what is worked out of the job in the background, again after every change of the job.</summary>
public abstract class WorkedPlaceViewModel : PlaceViewModel
{
    /// <summary>Begins to listen to the window.</summary>
    protected WorkedPlaceViewModel(JobViewModel window)
        : base(window)
    {
    }

    /// <summary>The work in the background, for whoever waits for it.</summary>
    public Task Working { get; private set; } = Task.CompletedTask;

    /// <summary>True while something is worked out.</summary>
    public bool IsWorking => !Working.IsCompleted;

    /// <summary>Begins to work; what is worked out already is not worked out again.</summary>
    public void Begin() => Working = Working.ContinueWith(
        _ =>
        {
            if (Window.Live is not null)
            {
                Make();
            }
        },
        CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default).ContinueWith(
        _ => OnPropertyChanged(string.Empty), CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);

    /// <summary>Works it out; on a thread of the pool, never twice at a time.</summary>
    protected abstract void Make();

    /// <inheritdoc/>
    protected override void OnWindowChange()
    {
        Begin();
        base.OnWindowChange();
    }
}
