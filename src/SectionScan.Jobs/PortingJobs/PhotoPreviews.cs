using SectionScan.Imaging.Photos;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>Pictures of a job's photos for the screen. Each is made once, however many ask for it, and kept in the job's folder; one
/// photo is decoded at a time, so that a page with many of them does not fill the memory.</summary>
public sealed class PhotoPreviews : IDisposable
{
    private const string FolderName = "previews";
    private const int SmallSidePx = 640;

    private readonly SemaphoreSlim decoding = new(1, 1);

    /// <summary>A small picture, upright: a JPEG file's path.</summary>
    public Task<Result<string>> SmallAsync(JobFolder folder, JobPhoto photo) => MakeAsync(folder, photo, string.Empty, SmallSidePx);

    /// <summary>The whole photo, upright, for formats that browsers do not show: a JPEG file's path.</summary>
    public Task<Result<string>> WholeAsync(JobFolder folder, JobPhoto photo) => MakeAsync(folder, photo, "-whole", int.MaxValue);

    /// <inheritdoc/>
    public void Dispose() => decoding.Dispose();

    private async Task<Result<string>> MakeAsync(JobFolder folder, JobPhoto photo, string kind, int longestSidePx)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(photo);
        var path = folder.PathOf(Path.Combine(FolderName, photo.Id + kind + ".jpg"));
        if (File.Exists(path))
        {
            return path;
        }

        await decoding.WaitAsync().ConfigureAwait(false);
        try
        {
            return File.Exists(path) ? path : await Task.Run(() => PhotoView.Picture(folder.PathOf(photo), longestSidePx).Then(picture =>
                OutputFolder.Open(Path.GetDirectoryName(path)!).Then(open => open.Write(Path.GetFileName(path), picture)))).ConfigureAwait(false);
        }
        finally
        {
            decoding.Release();
        }
    }
}
