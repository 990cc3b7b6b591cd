using System.ComponentModel;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Testing.Sections;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

public sealed class LibraryTests : IDisposable
{
    private readonly Shop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public void Ranges_count_before_the_shelf_is_cut_to_what_it_holds()
    {
        // 210 small ones come before the large one by name.
        Fill(210, 20);
        Add("Zeta", 1, 60);
        using var model = new LibraryViewModel(shop.Desk, shop.Units);

        model.SearchCommand.Execute(null);
        Assert.Equal(200, model.Found.Count);
        Assert.Contains("first 200", model.Heading, StringComparison.Ordinal);

        model.LeastArea = "1000";
        model.SearchCommand.Execute(null);
        Assert.Equal("Zeta", Assert.Single(model.Found).Entry.Place.Head);

        // The words are found 211 times; the range leaves one.
        model.Words = "mould";
        model.SearchCommand.Execute(null);
        Assert.Equal("Zeta", Assert.Single(model.Found).Entry.Place.Head);

        model.MostArea = "1,200";
        model.SearchCommand.Execute(null);
        Assert.Equal("not-a-number", model.Problem!.Code);
    }

    [Fact]
    public void Looking_at_the_shelf_again_asks_the_library_nothing_and_tells_nobody()
    {
        Fill(3, 30);
        using var model = new LibraryViewModel(shop.Desk, shop.Units);
        model.SearchCommand.Execute(null);
        File.Delete(shop.Desk.LibraryPath);
        var told = new List<string?>();
        ((INotifyPropertyChanged)model).PropertyChanged += (_, e) => told.Add(e.PropertyName);

        Assert.All(model.Found, card => Assert.InRange(card.Outline!.Points.ToArray().Max(p => p.XMm), 14.9, 15.1));

        Assert.Empty(told);
    }

    private void Fill(int count, double widthMm)
    {
        for (var station = 1; station <= count; station++)
        {
            Add("Alpha", station, widthMm);
        }
    }

    private void Add(string head, int station, double widthMm)
    {
        using var library = SectionLibrary.Open(shop.Desk.LibraryPath, TimeProvider.System).ValueOrThrow();
        library.Add(new(
            new(head, PortName.Parse("intake 1").ValueOrThrow(), station, "mould"),
            SampleSections.Document(SampleSections.Ellipse(widthMm, widthMm), station), "", [], [])).ValueOrThrow();
    }
}
