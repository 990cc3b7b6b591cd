namespace SectionScan.Workbench.ViewModels.Tests.Places;

/// <summary>A shop and the places that a test opens in it, all closed behind it.</summary>
public abstract class ShopWithPlaces : IDisposable
{
    private protected Shop Shop { get; } = new();

    private protected List<IDisposable> Places { get; } = [];

    public void Dispose()
    {
        Places.ForEach(place => place.Dispose());
        Shop.Dispose();
        GC.SuppressFinalize(this);
    }
}
