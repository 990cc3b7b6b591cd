using SectionScan.Jobs.PortingJobs;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>Digitises photos of one job in the background. It belongs to the job, not to a window: closing the window does not end
/// it, and every window sees how far it has come.</summary>
public sealed class DigitisingRun
{
    private readonly LiveJob live;
    private readonly string program;
    private readonly Lock gate = new();
    private volatile bool isToStop;

    internal DigitisingRun(LiveJob live, string program)
    {
        this.live = live;
        this.program = program;
    }

    /// <summary>True while it works.</summary>
    public bool IsRunning { get; private set; }

    /// <summary>Photos dealt with in this run.</summary>
    public int Done { get; private set; }

    /// <summary>Photos of this run in all.</summary>
    public int Total { get; private set; }

    /// <summary>The photo being digitised, as its sender called it; empty when there is none.</summary>
    public string Current { get; private set; } = string.Empty;

    /// <summary>Digitises photos, one after another; does nothing while it works already.</summary>
    /// <param name="photoIds">Which.</param>
    /// <returns>When all are done or it was stopped.</returns>
    public Task StartAsync(IReadOnlyList<string> photoIds)
    {
        ArgumentNullException.ThrowIfNull(photoIds);
        lock (gate)
        {
            if (IsRunning || photoIds.Count == 0)
            {
                return Task.CompletedTask;
            }

            IsRunning = true;
            (Done, Total, Current) = (0, photoIds.Count, string.Empty);
            isToStop = false;
        }

        live.Tell();
        return Task.Run(() => Work(photoIds));
    }

    /// <summary>Stops after the photo in hand; what is finished stays.</summary>
    public void Stop() => isToStop = true;

    private void Work(IReadOnlyList<string> photoIds)
    {
        try
        {
            foreach (var id in photoIds)
            {
                if (isToStop)
                {
                    break;
                }

                Digitise(id);
                Done++;
                live.Tell();
            }
        }
        finally
        {
            (IsRunning, Current) = (false, string.Empty);
            live.Tell();
        }
    }

    private void Digitise(string id)
    {
        var job = live.Job;
        if (job.Photo(id) is not { } photo)
        {
            return;
        }

        Current = photo.GivenName;
        live.Tell();
        var run = JobDigitising.Run(live.Folder, job, photo, program, CancellationToken.None);
        live.Do($"Digitise {photo.GivenName}", now => run.TryGet(out var done, out var problem)
            ? JobDigitising.With(now, id, done)
            : now.Photo(id) is { } still ? now.With(still with { Problem = problem }) : now);
    }
}
