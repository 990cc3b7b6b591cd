using SectionScan.Imaging.Photos;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Testing.Truth;

namespace SectionScan.Jobs.Tests.PortingJobs;

public sealed class JobFolderTests : IDisposable
{
    private readonly ResultFolder results = new();

    public void Dispose() => results.Dispose();

    [Fact]
    public void A_history_that_grows_too_long_loses_its_farthest_steps_and_the_job_can_be_read_again()
    {
        // 200 photos with 4 kB of warnings each, in a hundred states: 80 MB, more than is read.
        var folder = JobFolder.Open(results.Root).ValueOrThrow();
        var photos = Enumerable.Range(1, 200).Select(n =>
            new JobPhoto(FormattableString.Invariant($"photo-{n}"), FormattableString.Invariant($"photo-{n}.jpg"), "a.jpg", 4000, 3000, 0) { Warnings = [new string('w', 4000)] });
        var history = JobHistory.Of(new() { Name = "0", Photos = [.. photos] });
        for (var i = 1; i <= JobHistory.MostSteps; i++)
        {
            history = history.Do("Rename", history.Present with { Name = FormattableString.Invariant($"{i}") });
        }

        var written = folder.Write(history).ValueOrThrow();

        var read = folder.Read().ValueOrThrow();
        Assert.Equal("100", read.Present.Name);
        Assert.Equal(200, read.Present.Photos.Count);
        Assert.Equal(written.Past.Count, read.Past.Count);
        Assert.InRange(read.Past.Count, 10, 50);
        Assert.Equal("99", read.Past[^1].Job.Name);
        Assert.Equal("99", read.Undo().Present.Name);
    }

    [Theory]
    [InlineData("../../other/photo-1.jpg", "lens-1.json", "digitised/a.section.json", "photo-1")]
    [InlineData("photo-1.jpg", "/etc/passwd", "digitised/a.section.json", "photo-1")]
    [InlineData("photo-1.jpg", "lens-1.json", "../../a.section.json", "photo-1")]
    [InlineData("photo-1.jpg", "lens-1.json", "digitised/a.section.json", "../photo-1")]
    public void A_job_that_names_a_file_elsewhere_is_not_let_in(string photo, string lens, string document, string id)
    {
        var folder = JobFolder.Open(results.PathOf("job")).ValueOrThrow();
        var sound = new PortingJob { Name = "Job" };
        var odd = sound with
        {
            LensFile = lens,
            Photos = [new("photo-1", photo, "a.jpg", 4000, 3000, 0)],
            Sections = [new(id, "photo-1", document, 1)],
        };

        // In the past it is as odd as in the present: undo would bring it back.
        foreach (var history in new[] { JobHistory.Of(odd), JobHistory.Of(odd).Do("Empty", sound) })
        {
            folder.Write(history).ValueOrThrow();
            Assert.False(folder.Read().TryGet(out _, out var problem));
            Assert.Equal("job-damaged", problem.Code);
        }
    }

    [Fact]
    public async Task However_many_ask_at_once_each_picture_is_made_once_and_whole()
    {
        var folder = JobFolder.Open(results.Root).ValueOrThrow();
        await using var content = File.OpenRead(SamplePhotos.PhotoPath("c01"));
        var photo = (await PhotoIntake.TakeAsync(folder, content, "c01.jpg", CancellationToken.None)).ValueOrThrow();
        using var previews = new PhotoPreviews();

        var made = await Task.WhenAll(Enumerable.Range(0, 12).Select(_ => Task.Run(async () =>
        {
            var path = (await previews.SmallAsync(folder, photo)).ValueOrThrow();
            return (path, File.GetLastWriteTimeUtc(path), PhotoView.Read(path).ValueOrThrow());
        })));

        Assert.Single(made.Distinct());
        Assert.Equal(640, Math.Max(made[0].Item3.WidthPx, made[0].Item3.HeightPx));
    }

    [Fact]
    public void One_workbench_at_a_time_holds_the_folder_and_a_closed_one_leaves_it()
    {
        var one = JobsFolder.Open(results.Root).ValueOrThrow();
        var other = JobsFolder.Open(results.Root).ValueOrThrow();

        using (one.Hold().ValueOrThrow())
        {
            Assert.False(other.Hold().TryGet(out _, out var problem));
            Assert.Equal("jobs-folder-in-use", problem.Code);
        }

        using var held = other.Hold().ValueOrThrow();
        Assert.NotNull(held);
    }
}
