using System.ComponentModel;
using CommunityToolkit.Mvvm.ComponentModel;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>One place of a window. Whatever changes in the job or the window may change what it shows.</summary>
public abstract class PlaceViewModel : ObservableObject, IDisposable
{
    private LiveJob? shown;

    /// <summary>Begins to listen to the window.</summary>
    protected PlaceViewModel(JobViewModel window)
    {
        ArgumentNullException.ThrowIfNull(window);
        Window = window;
        shown = window.Live;
        window.PropertyChanged += OnWindowChanged;
    }

    /// <summary>The window.</summary>
    public JobViewModel Window { get; }

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Leaves the window.</summary>
    protected virtual void Dispose(bool isDisposing)
    {
        if (isDisposing)
        {
            Window.PropertyChanged -= OnWindowChanged;
        }
    }

    /// <summary>Told after every change of the job or the window.</summary>
    protected virtual void OnWindowChange() => OnPropertyChanged(string.Empty);

    /// <summary>Told when the window shows another job: what was chosen, picked or told for the one before is forgotten.</summary>
    protected virtual void OnOtherJob()
    {
    }

    private void OnWindowChanged(object? sender, PropertyChangedEventArgs e)
    {
        if (!ReferenceEquals(shown, Window.Live))
        {
            shown = Window.Live;
            OnOtherJob();
        }

        OnWindowChange();
    }
}
