using SectionScan.Metrology.Measures;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Desk;

/// <summary>No name of a photo, a run or a section ever comes to mean another thing.</summary>
public sealed class JobNamesTests : IDisposable
{
    private readonly Shop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Measures_of_a_run_that_was_taken_back_are_never_shown_for_the_next()
    {
        var window = shop.WindowOnNewJob();
        using var capture = new CaptureViewModel(window);
        using var digitise = new DigitiseViewModel(window);
        var photo = await Shop.TakeAsync(window, "p01");
        capture.SetThickness(photo.Id, "6");
        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);
        var (thickFile, thickArea) = (digitise.Section!.DocumentFile, Area(digitise));

        window.UndoCommand.Execute(null);
        capture.SetThickness(photo.Id, "2");
        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);

        // Seen from some 400 mm, a face 4 mm lower is some 2 % larger in area (field guide, 5.3: (H/(H−h))²).
        Assert.NotEqual(thickFile, digitise.Section!.DocumentFile);
        Assert.True(Area(digitise) > 1.01 * thickArea);

        // And the thick one's own files are still what they were.
        Assert.False(digitise.IsOutOfDate(digitise.Photo!));
        window.UndoCommand.Execute(null);
        Assert.Null(digitise.Section);
        capture.SetThickness(photo.Id, "6");
        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);
        Assert.Equal(thickArea, Area(digitise));
        capture.SetThickness(photo.Id, "5");
        Assert.True(digitise.IsOutOfDate(digitise.Photo!));
    }

    [Fact]
    public async Task A_photo_that_was_taken_back_keeps_its_name_even_when_the_program_begins_again()
    {
        var window = shop.WindowOnNewJob();
        await Shop.TakeAsync(window, "c01");
        window.UndoCommand.Execute(null);
        window.RenameCommand.Execute("The step taken back is gone now");

        var later = shop.WindowLater(window.Live!.Id);
        var photo = await Shop.TakeAsync(later, "c02");

        Assert.Equal("photo-2", photo.Id);
        Assert.True(File.Exists(Path.Combine(later.Live!.Folder.PhotosPath, "photo-1.jpg")));
    }

    [Fact]
    public async Task Photos_that_arrive_at_once_get_names_of_their_own()
    {
        var window = shop.WindowOnNewJob();

        var photos = await Task.WhenAll(Enumerable.Range(1, 9).Select(n => Task.Run(() => Shop.TakeAsync(window, $"c0{n}"))));

        Assert.Equal(9, photos.Select(each => each.Id).Distinct().Count());
        Assert.Equal(9, window.Job.Photos.Count);
        Assert.All(photos, photo => Assert.Equal(
            new FileInfo(Testing.Truth.SamplePhotos.PhotoPath(Path.GetFileNameWithoutExtension(photo.GivenName))).Length,
            new FileInfo(window.Live!.Folder.PathOf(photo)).Length));
    }

    [Fact]
    public async Task A_station_that_is_found_again_stays_chosen_when_its_photo_is_digitised_again()
    {
        var window = shop.WindowOnNewJob();
        using var digitise = new DigitiseViewModel(window);
        using var correct = new CorrectViewModel(window, digitise);
        await Shop.TakeAsync(window, "p01");
        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);
        digitise.ChosenSection = window.Job.Sections[0].Id;
        var station = digitise.Section!.Station;
        window.Live!.Do("Move a section to the end", job => job with { Sections = [.. job.Sections.Skip(1), job.Sections[0]] });
        var second = window.Job.Sections[0];
        correct.SetStation("77");

        await digitise.DigitiseAgainCommand.ExecuteAsync("photo-1");

        // The one whose station was changed by hand is not found again: its id goes to nobody.
        var ids = window.Job.Sections.Select(each => each.Id).ToList();
        Assert.DoesNotContain("photo-1-1", ids);
        Assert.Contains(window.Job.Sections, each => each.Id == "photo-1-5" && each.Station == station);
        Assert.Equal(second.Station, window.Job.Section(second.Id)!.Station);
        Assert.Equal(4, ids.Distinct().Count());
    }

    private static double Area(DigitiseViewModel digitise) =>
        digitise.Measured(digitise.Section!)!.ValueOrThrow().Measures[MeasureCatalogue.Area].Estimate.Value;
}
