using System.Globalization;
using SectionScan.Jobs.Checking;
using SectionScan.Jobs.PortingJobs;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>The checks of one job's photos, each made once for what is known of the photo, one after another in the background.</summary>
internal sealed class PhotoChecks(LiveJob live)
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, CheckOutcome> found = new(StringComparer.Ordinal);
    private readonly Queue<(PortingJob Job, JobPhoto Photo, string Key)> waiting = new();
    private readonly HashSet<string> begun = new(StringComparer.Ordinal);
    private bool isWorking;

    /// <summary>What the check of a photo found as the job stands, or null while it is not finished. A check that nobody asked for yet
    /// begins now: thickness, check bars and lens change it, and so do undo and redo.</summary>
    public CheckOutcome? Of(PortingJob job, JobPhoto photo)
    {
        var key = KeyOf(job, photo);
        lock (gate)
        {
            if (found.TryGetValue(key, out var outcome))
            {
                return outcome;
            }

            if (begun.Add(key))
            {
                waiting.Enqueue((job, photo, key));
                if (!isWorking)
                {
                    isWorking = true;
                    _ = Task.Run(Work);
                }
            }

            return null;
        }
    }

    private static string KeyOf(PortingJob job, JobPhoto photo) => string.Create(
        CultureInfo.InvariantCulture, $"{photo.Id} {photo.ThicknessMm} {job.LensFile} {job.CheckBarAcrossMm} {job.CheckBarUpMm}");

    private void Work()
    {
        while (Next() is { } next)
        {
            // A photo that was removed, or of which something else is known by now, is not waited for.
            if (live.Job.Photo(next.Photo.Id) is not { } photo || KeyOf(live.Job, photo) != next.Key)
            {
                lock (gate)
                {
                    begun.Remove(next.Key);
                }

                continue;
            }

            var outcome = JobDigitising.Settings(live.Folder, next.Job, next.Photo).TryGet(out var settings, out var problem)
                ? CheckPhotos.Run([live.Folder.PathOf(next.Photo)], settings)[0]
                : new(next.Photo.GivenName, null, problem);
            lock (gate)
            {
                found[next.Key] = outcome;
            }

            live.Tell();
        }
    }

    private (PortingJob Job, JobPhoto Photo, string Key)? Next()
    {
        lock (gate)
        {
            if (waiting.TryDequeue(out var next))
            {
                return next;
            }

            isWorking = false;
            return null;
        }
    }
}
