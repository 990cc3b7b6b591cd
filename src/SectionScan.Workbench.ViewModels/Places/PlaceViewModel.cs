using System.ComponentModel;
using CommunityToolkit.Mvvm.ComponentModel;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>One place of a window. Whatever changes in the job or the window may change what it shows.</summary>
public abstract class PlaceViewModel : ObservableObject, IDisposable
{
    /// <summary>Begins to listen to the window.</summary>
    protected PlaceViewModel(JobViewModel window)
    {
        ArgumentNullException.ThrowIfNull(window);
        Window = window;
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

    private void OnWindowChanged(object? sender, PropertyChangedEventArgs e) => OnWindowChange();
}
