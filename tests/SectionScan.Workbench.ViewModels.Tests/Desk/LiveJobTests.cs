using System.Text;
using SectionScan.Jobs.PortingJobs;

namespace SectionScan.Workbench.ViewModels.Tests.Desk;

public sealed class LiveJobTests : IDisposable
{
    private readonly Shop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public void Every_change_is_on_the_disk_before_anybody_is_told()
    {
        var window = shop.WindowOnNewJob();
        string? onDisk = null;
        window.Live!.Changed += (_, _) => onDisk = shop.NewDesk().Open(window.Live.Id).ValueOrThrow().Job.Name;

        window.Live.Do("Rename the job", job => job with { Name = "Other" });

        Assert.Equal("Other", onDisk);
    }

    [Fact]
    public void Undo_and_redo_outlive_the_program()
    {
        var window = shop.WindowOnNewJob();
        window.Live!.Do("Rename the job", job => job with { Name = "Second" });
        window.Live.Do("Rename the job", job => job with { Name = "Third" });
        window.Live.Undo();

        var later = shop.NewDesk().Open(window.Live.Id).ValueOrThrow();

        Assert.Equal("Second", later.Job.Name);
        Assert.True(later.Redo());
        Assert.Equal("Third", later.Job.Name);
        Assert.True(later.Undo());
        Assert.True(later.Undo());
        Assert.Equal("Trial", later.Job.Name);
        Assert.Null(later.NextUndo);
    }

    [Fact]
    public void A_change_that_cannot_be_saved_does_not_happen_and_says_why()
    {
        var window = shop.WindowOnNewJob();
        var file = Path.Combine(window.Live!.Folder.FullPath, "job.json.part");
        Directory.CreateDirectory(file);

        var isDone = window.Live.Do("Rename the job", job => job with { Name = "Other" });

        Assert.False(isDone);
        Assert.Equal("Trial", window.Job.Name);
        Assert.Equal("cannot-write", window.SaveProblem!.Code);

        Directory.Delete(file);
        Assert.True(window.Live.Do("Rename the job", job => job with { Name = "Other" }));
        Assert.Null(window.SaveProblem);
    }

    [Theory]
    [InlineData("../../../evil.jpg")]
    [InlineData("..\\..\\evil.jpg")]
    [InlineData("/etc/passwd")]
    public async Task A_photo_is_kept_under_our_own_name_whatever_it_is_called(string called)
    {
        var window = shop.WindowOnNewJob();
        await using var content = File.OpenRead(Testing.Truth.SamplePhotos.PhotoPath("c01"));

        var photo = (await window.Live!.TakePhotoAsync(content, called, CancellationToken.None)).ValueOrThrow();

        Assert.Equal("photo-1.jpg", photo.File);
        Assert.DoesNotContain('/', photo.GivenName);
        Assert.DoesNotContain('\\', photo.GivenName);
        Assert.Equal([Path.Combine(window.Live.Folder.PhotosPath, "photo-1.jpg")], Directory.GetFiles(window.Live.Folder.PhotosPath));
    }

    [Fact]
    public async Task What_is_no_photo_is_refused_and_leaves_nothing_behind()
    {
        var window = shop.WindowOnNewJob();
        using var script = new MemoryStream(Encoding.UTF8.GetBytes("<script>alert(1)</script>"));

        var taken = await window.Live!.TakePhotoAsync(script, "holiday.jpg", CancellationToken.None);

        Assert.False(taken.TryGet(out _, out var problem));
        Assert.Equal("not-a-photo", problem.Code);
        Assert.Equal("holiday.jpg", problem.Where);
        Assert.Empty(Directory.GetFiles(window.Live.Folder.PhotosPath));
        Assert.Empty(window.Job.Photos);
    }

    [Fact]
    public async Task An_endless_upload_is_cut_off_at_the_limit()
    {
        var window = shop.WindowOnNewJob();
        await using var endless = new EndlessStream();

        var taken = await window.Live!.TakePhotoAsync(endless, "big.jpg", CancellationToken.None);

        Assert.False(taken.TryGet(out _, out var problem));
        Assert.Equal("upload-too-large", problem.Code);
        Assert.InRange(endless.Given, PhotoIntake.MostBytes, PhotoIntake.MostBytes + 1_000_000);
        Assert.Empty(Directory.GetFiles(window.Live.Folder.PhotosPath));
    }

    [Fact]
    public void A_job_is_found_by_its_own_id_and_by_nothing_else()
    {
        shop.WindowOnNewJob();

        Assert.All(["..", "../trial", "trial/..", "", "/", "nothing"], id => Assert.False(shop.Desk.Open(id).IsSuccess));
        Assert.Same(shop.Desk.Open("trial").ValueOrThrow(), shop.Desk.Open("trial").ValueOrThrow());
    }

    private sealed class EndlessStream : Stream
    {
        public long Given { get; private set; }

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => Given; set => throw new NotSupportedException(); }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            Given += count;
            return count;
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
