using SectionScan.Imaging.Checks;
using SectionScan.Jobs.Checking;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Measures;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

public sealed class PlacesTests : IDisposable
{
    private readonly Shop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public void A_job_begins_with_a_name_and_not_without()
    {
        var start = new StartViewModel(shop.Desk);
        Assert.False(start.BeginCommand.CanExecute(null));

        start.NewName = " Bramble, intake 1 ";
        Assert.True(start.BeginCommand.CanExecute(null));
        start.BeginCommand.Execute(null);

        Assert.Equal("bramble--intake-1", start.Begun);
        Assert.Equal("Bramble, intake 1", Assert.Single(start.Jobs()).Name);
    }

    [Fact]
    public void Two_jobs_of_one_name_have_folders_of_their_own()
    {
        Assert.Equal("trial", shop.Desk.Begin("Trial").ValueOrThrow());
        Assert.Equal("trial-2", shop.Desk.Begin("Trial").ValueOrThrow());
    }

    [Fact]
    public void A_damaged_job_is_listed_with_its_problem_and_hinders_no_other()
    {
        var id = shop.Desk.Begin("Damaged").ValueOrThrow();
        shop.Desk.Begin("Sound").ValueOrThrow();
        File.WriteAllText(Path.Combine(shop.Folder, id, "job.json"), "{");

        var jobs = new StartViewModel(shop.NewDesk()).Jobs();

        Assert.Equal("job-damaged", jobs.Single(job => job.Id == id).Problem!.Code);
        Assert.Null(jobs.Single(job => job.Name == "Sound").Problem);
    }

    [Fact]
    public void Undo_and_redo_can_be_pressed_when_there_is_something_to_do()
    {
        var window = shop.WindowOnNewJob();
        Assert.False(window.UndoCommand.CanExecute(null));

        window.RenameCommand.Execute("Other");
        Assert.True(window.UndoCommand.CanExecute(null));
        Assert.Equal("Rename the job", window.NextUndo);

        window.UndoCommand.Execute(null);
        Assert.Equal("Trial", window.Job.Name);
        Assert.True(window.RedoCommand.CanExecute(null));

        window.RedoCommand.Execute(null);
        Assert.Equal("Other", window.Job.Name);
    }

    [Fact]
    public void Two_windows_show_the_same_job_and_either_takes_the_other_ones_step_back()
    {
        var one = shop.WindowOnNewJob();
        var other = shop.Window(one.Live!.Id);
        var told = 0;
        other.PropertyChanged += (_, _) => told++;

        one.RenameCommand.Execute("Other");
        Assert.Equal("Other", other.Job.Name);
        Assert.True(told > 0);

        other.UndoCommand.Execute(null);
        Assert.Equal("Trial", one.Job.Name);
    }

    [Fact]
    public void Inches_are_chosen_once_for_all_windows_and_for_the_next_time()
    {
        var window = shop.WindowOnNewJob();

        window.ShowInchesCommand.Execute(true);

        Assert.True(window.Units.IsInch);
        Assert.True(new ViewModels.Desk.UnitChoice(shop.Folder).IsInch);
    }

    [Fact]
    public void Check_bars_give_the_print_ratio_and_an_unlikely_one_is_refused()
    {
        var window = shop.WindowOnNewJob();
        using var prepare = new PrepareViewModel(window);

        prepare.SetAcross("199.6");
        prepare.SetUp("150.15");
        Assert.Equal(0.998, window.Job.PrintRatio()!.Value.X, 9);
        Assert.Equal(1.001, window.Job.PrintRatio()!.Value.Y, 9);
        Assert.Contains("−0.20 %", prepare.PrintInWords, StringComparison.Ordinal);

        prepare.SetAcross("20");
        Assert.Equal("check-bar-unlikely", prepare.Problem!.Code);
        Assert.Equal(199.6, window.Job.CheckBarAcrossMm);
    }

    [Fact]
    public async Task A_photo_is_checked_at_once_and_again_when_the_thickness_is_told()
    {
        var window = shop.WindowOnNewJob();
        using var capture = new CaptureViewModel(window);

        var photo = await Shop.TakeAsync(window, "p01");
        Assert.Equal(CheckVerdict.Good, (await CheckedAsync(capture, photo.Id)).Report!.Verdict);

        capture.SetThickness(photo.Id, "6");
        Assert.NotNull((await CheckedAsync(capture, photo.Id)).Report);
        Assert.Equal(6, window.Job.Photo(photo.Id)!.ThicknessMm);

        capture.SetThickness(photo.Id, "600");
        Assert.Equal("thickness-unlikely", capture.Problem!.Code);
        Assert.Equal(6, window.Job.Photo(photo.Id)!.ThicknessMm);

        capture.SetStage(photo.Id, " exemplar ");
        Assert.Equal("exemplar", window.Job.Photo(photo.Id)!.Stage);

        capture.RemoveCommand.Execute(photo.Id);
        Assert.Empty(window.Job.Photos);
        window.UndoCommand.Execute(null);
        Assert.Equal("exemplar", window.Job.Photo(photo.Id)!.Stage);
    }

    [Fact]
    public async Task Photos_become_sections_that_are_compared_and_kept_in_the_library()
    {
        var window = shop.WindowOnNewJob();
        using var capture = new CaptureViewModel(window);
        using var digitise = new DigitiseViewModel(window);
        using var compare = new CompareViewModel(window, shop.Desk);
        using var archive = new ArchiveViewModel(window, shop.Desk);
        foreach (var (sample, stage, thickness) in new[] { ("p01", "exemplar", "6"), ("p06", "finished", "5") })
        {
            var photo = await Shop.TakeAsync(window, sample);
            capture.SetStage(photo.Id, stage);
            capture.SetThickness(photo.Id, thickness);
        }

        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);

        Assert.Equal(8, window.Job.Sections.Count);
        Assert.Empty(digitise.Waiting);
        Assert.Equal(4, digitise.Sections.Count);
        var truth = SamplePhotos.TruthOf("p01").Sections.Single(each => each.Station == 4);
        var exemplar = window.Job.Sections.Single(each => window.Job.NameOf(each) == "exemplar, station 4");
        var area = digitise.Measured(exemplar)!.ValueOrThrow().Measures[MeasureCatalogue.Area].Estimate;
        Assert.InRange(area.Value / truth.AreaMm2, 0.9975, 1.0025);

        // The outline over the photo: its middle lies inside the picture, at the slice.
        var shown = digitise.Displayed(exemplar);
        Assert.All(shown, p => Assert.True(p.X is > 0 and < 4032 && p.Y is > 0 and < 3024));

        // sample-images/README.md: station 4 is cut 0.400 mm beyond the exemplar on its right side.
        compare.ChooseReference(exemplar.Id);
        Assert.Null(compare.Comparison);
        compare.ChooseMeasured(window.Job.Sections.Single(each => window.Job.NameOf(each) == "finished, station 4").Id);
        compare.ChooseAlignment(AlignmentMethod.Centroids);
        var comparison = compare.Comparison!.ValueOrThrow();
        Assert.Equal(OutlineRegion.Right, comparison.Result.Highest.Region);
        Assert.InRange(comparison.Result.Highest.DeviationMm, 0.15, 0.5);
        compare.ChooseMirrored(true);
        Assert.NotEqual(OutlineRegion.Right, compare.Comparison!.ValueOrThrow().Result.Highest.Region);

        archive.SetHead("Bramble 480 twin");
        archive.SetPort("nonsense");
        Assert.Equal("port-name-unusable", Assert.Single(archive.Failed).Code);
        archive.SetPort("intake 1");
        await archive.AddAllCommand.ExecuteAsync(null);
        Assert.Equal(8, archive.Added.Count);
        Assert.Empty(archive.Failed);
        await archive.AddAllCommand.ExecuteAsync(null);
        Assert.All(archive.Failed, problem => Assert.Equal("entry-place-taken", problem.Code));

        compare.LookAgainCommand.Execute(null);
        Assert.Equal(8, compare.LibrarySections.Count);
        compare.ChooseMirrored(false);
        compare.ChooseReference(compare.LibrarySections.Single(each => each.Name.EndsWith("station 4/exemplar", StringComparison.Ordinal)).Key);
        Assert.Equal(comparison.Result.Highest.DeviationMm, compare.Comparison!.ValueOrThrow().Result.Highest.DeviationMm, 6);

        // Digitising again replaces what the photo gave; taking it back brings the earlier files back.
        var before = window.Job.Sections[0].DocumentFile;
        await digitise.DigitiseAgainCommand.ExecuteAsync(window.Job.Photos[0].Id);
        Assert.NotEqual(before, window.Job.Sections[0].DocumentFile);
        window.UndoCommand.Execute(null);
        Assert.Equal(before, window.Job.Sections[0].DocumentFile);
        Assert.True(digitise.Measured(window.Job.Sections[0])!.IsSuccess);
    }

    [Fact]
    public async Task A_photo_that_cannot_be_measured_says_why_and_hinders_no_other()
    {
        var window = shop.WindowOnNewJob();
        using var digitise = new DigitiseViewModel(window);
        await Shop.TakeAsync(window, "c01");

        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);

        Assert.Equal("no-slices", digitise.Photo!.Problem!.Code);
        Assert.Equal("c01.jpg", digitise.Photo.Problem.Where);
        Assert.False(digitise.Run!.IsRunning);
    }

    private static Task<CheckOutcome> CheckedAsync(CaptureViewModel capture, string photoId) =>
        Shop.UntilAsync(capture, () => capture.CheckOf(capture.Photos.Single(each => each.Id == photoId)));
}
