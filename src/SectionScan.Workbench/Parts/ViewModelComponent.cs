using System.ComponentModel;
using Microsoft.AspNetCore.Components;

namespace SectionScan.Workbench.Parts;

/// <summary>A component over a view model: it shows what the model holds, and again whenever the model says that this changed.</summary>
/// <typeparam name="TModel">The view model's type.</typeparam>
public abstract class ViewModelComponent<TModel> : ComponentBase, IDisposable
    where TModel : class, INotifyPropertyChanged
{
    /// <summary>The view model.</summary>
    [Inject]
    protected TModel Model { get; set; } = default!;

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <inheritdoc/>
    protected override void OnInitialized() => Model.PropertyChanged += OnModelChanged;

    /// <summary>Leaves the model.</summary>
    protected virtual void Dispose(bool isDisposing)
    {
        if (isDisposing)
        {
            Model.PropertyChanged -= OnModelChanged;
        }
    }

    private void OnModelChanged(object? sender, PropertyChangedEventArgs e) => _ = InvokeAsync(StateHasChanged);
}
