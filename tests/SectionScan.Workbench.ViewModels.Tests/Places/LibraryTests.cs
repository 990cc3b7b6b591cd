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

    [Fact]
    public void An_entry_or_one_of_its_past_revisions_becomes_the_reference_of_a_job()
    {
        // A circle of 30 mm, corrected to 32 mm: the wall moves by 1 mm.
        Add("Alpha", 4, 30);
        Revise(1, 32);
        var window = shop.WindowOnNewJob();
        using var compare = new CompareViewModel(window, shop.Desk);
        using var model = new LibraryViewModel(shop.Desk, shop.Units);
        model.ChooseJob(window.Live!.Id);
        model.ShowCommand.Execute(1L);
        Assert.Equal([15.0, 16.0], model.Shown!.Revisions.Select(each => Math.Round(each.Outline!.Points.ToArray().Max(p => p.XMm), 1)));

        Assert.True(model.Compare(1, 1));
        Assert.Equal("library:1@1", window.Job.Comparison.Reference);
        compare.LookAgainCommand.Execute(null);
        compare.ChooseMeasured("library:1");
        var comparison = compare.Comparison!.ValueOrThrow();
        Assert.EndsWith(", revision 1", comparison.Reference.Name, StringComparison.Ordinal);
        Assert.Equal(1, comparison.Result.MeanDeviationMm, 0.01);
        Assert.Equal(["library:1", "library:1@1"], compare.LibrarySections.Select(each => each.Key));

        // What an entry is now follows it: the difference is gone.
        Assert.True(model.Compare(1, null));
        Assert.Equal(0, compare.Comparison!.ValueOrThrow().Result.MeanDeviationMm, 0.0001);
        window.UndoCommand.Execute(null);
        Assert.Equal("library:1@1", window.Job.Comparison.Reference);
    }

    [Fact]
    public void Without_a_job_there_is_nothing_to_compare_in_and_a_lost_one_gives_way_to_the_last()
    {
        Add("Alpha", 4, 30);
        using var model = new LibraryViewModel(shop.Desk, shop.Units);
        model.ChooseJob(null);
        Assert.False(model.CanCompare);
        Assert.False(model.Compare(1, null));
        Assert.Equal("job-not-found", model.Problem!.Code);

        var window = shop.WindowOnNewJob();
        model.ChooseJob("gone");
        Assert.True(model.CanCompare);
        Assert.Equal(window.Live!.Id, model.ComparedIn);
    }

    private void Revise(long id, double widthMm)
    {
        using var library = SectionLibrary.Open(shop.Desk.LibraryPath, TimeProvider.System).ValueOrThrow();
        var content = library.Show(id).ValueOrThrow().Current.Content;
        library.Revise(id, content with { DocumentJson = SampleSections.Document(SampleSections.Ellipse(widthMm, widthMm), 4) }, "measured again").ValueOrThrow();
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
