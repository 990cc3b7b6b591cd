using SectionScan.Jobs.PortingJobs;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

public sealed class PrepareLensTests : IDisposable
{
    private readonly Shop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task The_lens_is_learnt_from_photos_of_the_bare_sheet_and_what_was_left_out_is_told_by_its_own_name()
    {
        var window = shop.WindowOnNewJob();
        using var prepare = new PrepareViewModel(window);
        foreach (var name in SampleJob.LensPhotos.Take(6))
        {
            await TakeAsync(window, name, await File.ReadAllBytesAsync(SamplePhotos.PhotoPath(Path.GetFileNameWithoutExtension(name))));
        }

        await TakeAsync(window, "broken.jpg", (await File.ReadAllBytesAsync(SamplePhotos.PhotoPath("c07")))[..100_000]);
        Assert.Empty(window.Job.Photos);

        await prepare.LearnLensCommand.ExecuteAsync(null);

        Assert.Null(prepare.Problem);
        Assert.Equal("broken.jpg", Assert.Single(prepare.LeftOut).Where);
        Assert.NotNull(window.Job.LensFile);
        prepare.UseNoLensCommand.Execute(null);
        Assert.Null(window.Job.LensFile);
        prepare.RemoveLensPhotoCommand.Execute("lens-photo-7");
        Assert.Equal(6, prepare.LensPhotos.Count);
        window.UndoCommand.Execute(null);
        Assert.Equal("broken.jpg", prepare.LensPhotos[^1].GivenName);
    }

    [Fact]
    public async Task Too_few_photos_are_refused_with_what_to_do()
    {
        var window = shop.WindowOnNewJob();
        using var prepare = new PrepareViewModel(window);
        await TakeAsync(window, "c01.jpg", await File.ReadAllBytesAsync(SamplePhotos.PhotoPath("c01")));

        await prepare.LearnLensCommand.ExecuteAsync(null);

        Assert.NotEmpty(prepare.Problem!.Remedy);
        Assert.Null(window.Job.LensFile);
    }

    private static async Task TakeAsync(JobViewModel window, string name, byte[] bytes)
    {
        using var content = new MemoryStream(bytes);
        Assert.True((await window.Live!.TakeLensPhotoAsync(content, name, CancellationToken.None)).IsSuccess);
    }
}
