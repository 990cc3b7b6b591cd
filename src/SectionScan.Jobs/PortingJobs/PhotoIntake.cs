using SectionScan.Imaging.Photos;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>Takes photos into a job's folder: bounded, looked at before they are kept, and under names of our own.</summary>
public static class PhotoIntake
{
    /// <summary>The longest file that is taken.</summary>
    public const long MostBytes = 200_000_000;

    /// <summary>The most photos that a job holds.</summary>
    public const int MostPhotos = 200;

    private const int LongestGivenName = 120;

    /// <summary>Takes one photo in.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="content">The file's bytes; not trusted.</param>
    /// <param name="givenName">What the sender calls it; not trusted, only shown.</param>
    /// <param name="stop">Ends the taking in; nothing is left behind.</param>
    /// <param name="isOfLens">True for a photo of the bare sheet, to learn the lens from.</param>
    public static async Task<Result<JobPhoto>> TakeAsync(JobFolder folder, Stream content, string givenName, CancellationToken stop, bool isOfLens = false)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(givenName);
        var shown = Shown(givenName);
        string? id = null;
        try
        {
            id = Reserve(folder, isOfLens ? "lens-photo-" : "photo-");
            if (!await CopyAsync(content, Arriving(folder, id), stop).ConfigureAwait(false))
            {
                return JobProblems.UploadTooLarge(shown, MostBytes);
            }

            return PhotoView.Read(Arriving(folder, id)).TryGet(out var view, out var problem)
                ? Keep(folder, id, shown, view)
                : problem with { Where = shown };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return FileProblems.CannotWrite(shown, e.Message);
        }
        finally
        {
            if (id is not null)
            {
                File.Delete(Arriving(folder, id));
            }
        }
    }

    private static string Arriving(JobFolder folder, string id) => Path.Combine(folder.PhotosPath, id + ".part");

    /// <summary>A name that no photo of the job ever had, told by the files: a photo that was removed or taken back keeps its own, so that
    /// undo finds it, and nothing known of one photo is ever taken for another's.</summary>
    private static string Reserve(JobFolder folder, string prefix)
    {
        while (true)
        {
            var id = UnusedName.Next(folder.PhotosPath, prefix);
            try
            {
                File.Open(Arriving(folder, id), FileMode.CreateNew).Dispose();
            }
            catch (IOException) when (File.Exists(Arriving(folder, id)))
            {
                // Another photo that arrives at the same time has it.
                continue;
            }

            // The name may have become a photo's between looking and reserving.
            if (Directory.EnumerateFiles(folder.PhotosPath, id + ".*").All(each => each == Arriving(folder, id)))
            {
                return id;
            }

            File.Delete(Arriving(folder, id));
        }
    }

    /// <summary>The name without anything that a screen or a reader could trip over, and without folders.</summary>
    private static string Shown(string givenName)
    {
        var last = givenName[(givenName.LastIndexOfAny(['/', '\\']) + 1)..];
        var plain = new string([.. last.Where(c => !char.IsControl(c)).Take(LongestGivenName)]).Trim();
        return plain.Length == 0 ? "photo" : plain;
    }

    private static Result<JobPhoto> Keep(JobFolder folder, string id, string shown, PhotoView view)
    {
        var file = id + view.Extension;
        File.Move(Arriving(folder, id), Path.Combine(folder.PhotosPath, file));
        return new JobPhoto(id, file, shown, view.WidthPx, view.HeightPx, view.QuarterTurns);
    }

    private static async Task<bool> CopyAsync(Stream content, string path, CancellationToken stop)
    {
        var file = new FileStream(path, FileMode.Create, FileAccess.Write);
        await using (file.ConfigureAwait(false))
        {
            var block = new byte[81920];
            long total = 0;
            int count;
            while ((count = await content.ReadAsync(block, stop).ConfigureAwait(false)) > 0)
            {
                total += count;
                if (total > MostBytes)
                {
                    return false;
                }

                await file.WriteAsync(block.AsMemory(0, count), stop).ConfigureAwait(false);
            }

            return true;
        }
    }
}
