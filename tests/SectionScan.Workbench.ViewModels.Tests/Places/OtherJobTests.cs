using SectionScan.Imaging.Checks;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

/// <summary>A window that goes to another job takes nothing of the first one with it.</summary>
public sealed class OtherJobTests : IDisposable
{
    private readonly Shop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Comparison_choice_picked_places_and_messages_are_the_other_jobs_own()
    {
        // Two jobs whose files have the same names; in the second, the slices are taken for thinner.
        var first = await DigitisedAsync("6");
        var second = await DigitisedAsync("1");
        var window = shop.Window(first);
        using var prepare = new PrepareViewModel(window);
        using var capture = new CaptureViewModel(window);
        using var digitise = new DigitiseViewModel(window);
        using var correct = new CorrectViewModel(window, digitise);
        using var compare = new CompareViewModel(window, shop.Desk);
        using var archive = new ArchiveViewModel(window, shop.Desk);
        var before = compare.Comparison!.ValueOrThrow();
        Assert.Equal(window.Job.Section("photo-1-2")!.Station, before.Measured.Station);
        digitise.ChosenSection = window.Job.Sections[2].Id;
        correct.TakeCommand.Execute(CorrectionTool.MovePoint);
        correct.Pick(5, 5);
        prepare.SetAcross("7");
        capture.SetThickness("photo-1", "600");
        archive.Notes = "of the first";
        await archive.AddAllCommand.ExecuteAsync(null);
        Assert.NotEmpty(archive.Added.Count > 0 ? archive.Added : (IReadOnlyList<object>)archive.Failed);

        window.Open(second);

        using var fresh = new CompareViewModel(window, shop.Desk);
        Assert.Equal(fresh.Comparison!.ValueOrThrow().Result.MeanDeviationMm, compare.Comparison!.ValueOrThrow().Result.MeanDeviationMm);
        Assert.NotEqual(before.Result.MeanDeviationMm, compare.Comparison!.ValueOrThrow().Result.MeanDeviationMm);
        Assert.Equal(window.Job.Sections[0], digitise.Section);
        Assert.Empty(correct.Picked);
        Assert.Equal(CorrectionTool.None, correct.Tool);
        Assert.Null(prepare.Problem);
        Assert.Null(capture.Problem);
        Assert.Empty(archive.Added);
        Assert.Empty(archive.Failed);
        Assert.Empty(archive.Notes);
    }

    [Fact]
    public void The_list_of_jobs_opens_none_of_them()
    {
        var id = shop.Desk.Begin("Listed").ValueOrThrow();
        var file = Path.Combine(shop.Folder, id, "job.json");
        File.WriteAllText(file, File.ReadAllText(file).Replace("\"past\":[]", "\"past\":[7]", StringComparison.Ordinal));
        var desk = shop.NewDesk();

        var listed = Assert.Single(new StartViewModel(desk).Jobs());

        Assert.Equal(("Listed", null), (listed.Name, listed.Problem));
        Assert.False(desk.Open(id).IsSuccess);
    }

    [Fact]
    public async Task A_photo_is_checked_for_what_undo_brings_back()
    {
        var window = shop.WindowOnNewJob();
        var photo = await Shop.TakeAsync(window, "p01");
        window.Live!.Do("Set the thickness", job => job.With(photo with { ThicknessMm = 6 }));
        window.Live.Do("Set the thickness", job => job.With(photo with { ThicknessMm = 5 }));

        // The program begins again: nothing is checked yet, and the check for 6 mm was never asked for.
        var later = shop.WindowLater(window.Live.Id);
        using var capture = new CaptureViewModel(later);
        await Shop.UntilAsync(capture, () => capture.CheckOf(capture.Photos[0]));
        later.UndoCommand.Execute(null);

        Assert.Equal(6, capture.Photos[0].ThicknessMm);
        var check = await Shop.UntilAsync(capture, () => capture.CheckOf(capture.Photos[0]));
        Assert.NotEqual(CheckVerdict.Poor, check.Report!.Verdict);
    }

    [Fact]
    public async Task What_is_no_number_keeps_the_entry_and_is_told()
    {
        var window = shop.WindowOnNewJob();
        using var prepare = new PrepareViewModel(window);
        using var capture = new CaptureViewModel(window);
        var photo = await Shop.TakeAsync(window, "c01");
        capture.SetThickness(photo.Id, "6.5");
        prepare.SetAcross("199.7");

        foreach (var typed in new[] { "6,5", "six", "1e999", "6.5 mm" })
        {
            capture.SetThickness(photo.Id, typed);
            Assert.Equal("not-a-number", capture.Problem!.Code);
            prepare.SetAcross(typed);
            Assert.Equal("not-a-number", prepare.Problem!.Code);
        }

        Assert.Equal(6.5, window.Job.Photos[0].ThicknessMm);
        Assert.Equal(199.7, window.Job.CheckBarAcrossMm);
        capture.SetThickness(photo.Id, "");
        Assert.Null(capture.Problem);
        Assert.Null(window.Job.Photos[0].ThicknessMm);
    }

    [Fact]
    public async Task Without_a_lens_profile_the_camera_is_to_be_tilted_and_with_one_held_straight_above()
    {
        var window = shop.WindowOnNewJob();
        using var capture = new CaptureViewModel(window);
        Assert.Contains("tilt", capture.HowToHold, StringComparison.Ordinal);

        var broken = Path.Combine(shop.Folder, "broken.jpg");
        await File.WriteAllBytesAsync(broken, File.ReadAllBytes(Testing.Truth.SamplePhotos.PhotoPath("c07"))[..100_000]);
        var leftOut = (await window.Live!.LearnLensAsync([.. SampleJob.LensPhotos.Take(6).Select(each =>
            Testing.Truth.SamplePhotos.PhotoPath(Path.GetFileNameWithoutExtension(each))), broken])).ValueOrThrow();

        Assert.Single(leftOut);
        Assert.Equal("lens-1.json", window.Job.LensFile);
        Assert.DoesNotContain("tilt", capture.HowToHold, StringComparison.Ordinal);
        window.UndoCommand.Execute(null);
        Assert.Null(window.Job.LensFile);
    }

    private async Task<string> DigitisedAsync(string thickness)
    {
        var window = shop.WindowOnNewJob();
        using var capture = new CaptureViewModel(window);
        using var digitise = new DigitiseViewModel(window);
        using var compare = new CompareViewModel(window, shop.Desk);
        var photo = await Shop.TakeAsync(window, "p01");
        capture.SetThickness(photo.Id, thickness);
        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);
        compare.ChooseReference("photo-1-1");
        compare.ChooseMeasured("photo-1-2");
        return window.Live!.Id;
    }
}
