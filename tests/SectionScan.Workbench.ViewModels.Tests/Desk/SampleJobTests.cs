using SectionScan.Jobs.PortingJobs;
using SectionScan.Porting.Documents;
using SectionScan.Testing.Repository;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Tests.Desk;

public sealed class SampleJobTests : IDisposable
{
    private readonly Shop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task The_sample_is_ready_to_be_digitised_and_taking_back_does_not_take_it_apart()
    {
        var window = shop.Window((await shop.Desk.BeginSampleAsync(CancellationToken.None)).ValueOrThrow());

        Assert.Equal(SampleJob.Photos, window.Job.Photos.Select(photo => new SampleJob.SamplePhoto(photo.GivenName, photo.Stage, photo.ThicknessMm)));
        Assert.NotNull(window.Job.LensFile);
        Assert.Equal((1, 1), window.Job.PrintRatio());
        Assert.Null(window.NextUndo);
    }

    [Fact]
    public void It_tells_of_port_and_engine_what_the_job_document_beside_its_photos_tells()
    {
        var path = Path.Combine(RepositoryFolder.Root, "sample-images", "as-cast.job.json");

        var told = PortData.From(JobDocumentFormat.Read(File.ReadAllText(path), path).ValueOrThrow());

        Assert.Equal(told.Stations, SampleJob.Begun.PortData.Stations);
        Assert.Equal(told with { Stations = [] }, SampleJob.Begun.PortData with { Stations = [] });
    }

    [Fact]
    public async Task A_lens_photo_that_cannot_be_used_is_told_and_not_passed_over()
    {
        var samples = Directory.CreateDirectory(Path.Combine(shop.Folder, "sample-images")).FullName;
        foreach (var photo in Directory.GetFiles(Path.Combine(RepositoryFolder.Root, "sample-images"), "*.jpg"))
        {
            File.CreateSymbolicLink(Path.Combine(samples, Path.GetFileName(photo)), photo);
        }

        // A copy that broke off in the middle.
        var whole = File.ReadAllBytes(Path.Combine(samples, "c05.jpg"));
        File.Delete(Path.Combine(samples, "c05.jpg"));
        File.WriteAllBytes(Path.Combine(samples, "c05.jpg"), whole[..(whole.Length / 2)]);
        var desk = new JobDesk(JobsFolder.Open(shop.Folder).ValueOrThrow(), "none", [shop.Folder], "test", TimeProvider.System);

        var begun = await desk.BeginSampleAsync(CancellationToken.None);

        Assert.False(begun.TryGet(out _, out var problem));
        Assert.EndsWith("c05.jpg", problem.Where, StringComparison.Ordinal);
    }
}
