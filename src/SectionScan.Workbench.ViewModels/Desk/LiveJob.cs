using System.Collections.Concurrent;
using System.Globalization;
using SectionScan.Jobs.Checking;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>One open job, shared by every window that shows it. Each change is on the disk before anybody sees it; a change that
/// cannot be saved does not happen.</summary>
public sealed class LiveJob
{
    private readonly Lock gate = new();
    private readonly ConcurrentDictionary<string, MeasuredSection> measured = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, CheckOutcome> checks = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, bool> checking = new(StringComparer.Ordinal);
    private readonly string program;
    private JobHistory history;
    private int photosEver;

    internal LiveJob(string id, JobFolder folder, JobHistory history, string program)
    {
        Id = id;
        Folder = folder;
        this.program = program;
        this.history = history;
        photosEver = history.Past.Append(new(string.Empty, history.Present)).Concat(history.Future).Max(step => step.Job.PhotosEver);
        Digitising = new(this, program);
    }

    /// <summary>Told after every change, on whichever thread made it.</summary>
    public event EventHandler? Changed;

    /// <summary>The job's id: the name of its folder.</summary>
    public string Id { get; }

    /// <summary>Its folder.</summary>
    public JobFolder Folder { get; }

    /// <summary>The job as it stands.</summary>
    public PortingJob Job => history.Present;

    /// <summary>The work that turns its photos into sections.</summary>
    public DigitisingRun Digitising { get; }

    /// <summary>Name and version of the program.</summary>
    public string Program => program;

    /// <summary>What undo would take back, or null.</summary>
    public string? NextUndo => history.Past.Count > 0 ? history.Past[^1].What : null;

    /// <summary>What redo would do again, or null.</summary>
    public string? NextRedo => history.Future.Count > 0 ? history.Future[^1].What : null;

    /// <summary>Why the last change was not saved, or null.</summary>
    public Problem? SaveProblem { get; private set; }

    /// <summary>Does a step.</summary>
    /// <param name="what">What is done, as an instruction.</param>
    /// <param name="change">From the job as it stands to the next one; the same one means that nothing is done.</param>
    /// <returns>True when it is done and saved.</returns>
    public bool Do(string what, Func<PortingJob, PortingJob> change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return Save(now => change(now.Present) is var next && ReferenceEquals(next, now.Present) ? now : now.Do(what, next));
    }

    /// <summary>Takes the last step back.</summary>
    public bool Undo() => Save(now => now.Undo());

    /// <summary>Does the step again that was taken back last.</summary>
    public bool Redo() => Save(now => now.Redo());

    /// <summary>Takes a photo in and begins to check it.</summary>
    /// <param name="content">The file's bytes; not trusted.</param>
    /// <param name="givenName">What the sender calls it; not trusted.</param>
    /// <param name="stop">Ends it.</param>
    public async Task<Result<JobPhoto>> TakePhotoAsync(Stream content, string givenName, CancellationToken stop)
    {
        if (Job.Photos.Count >= PhotoIntake.MostPhotos)
        {
            return JobProblems.TooManyPhotos(PhotoIntake.MostPhotos);
        }

        var number = Interlocked.Increment(ref photosEver);
        var taken = await PhotoIntake.TakeAsync(Folder, content, givenName, number, stop).ConfigureAwait(false);
        if (!taken.TryGet(out var photo, out var problem))
        {
            return problem;
        }

        var isAdded = Do($"Add {photo.GivenName}", job =>
        {
            // Photos that come one after another mostly show the same thing.
            var last = job.Photos.Count > 0 ? job.Photos[^1] : null;
            var like = photo with { Stage = last?.Stage ?? string.Empty, ThicknessMm = last?.ThicknessMm };
            return job with { Photos = [.. job.Photos, like], PhotosEver = Math.Max(job.PhotosEver, number) };
        });
        if (!isAdded)
        {
            return SaveProblem!;
        }

        BeginChecks();
        return Job.Photo(photo.Id) ?? photo;
    }

    /// <summary>What the check of a photo found, or null while it is not finished.</summary>
    public CheckOutcome? CheckOf(JobPhoto photo) => checks.GetValueOrDefault(CheckKey(Job, photo));

    /// <summary>Checks every photo that is not checked yet as the job stands, one after another, in the background.</summary>
    public void BeginChecks()
    {
        var job = Job;
        foreach (var photo in job.Photos)
        {
            var key = CheckKey(job, photo);
            if (!checks.ContainsKey(key) && checking.TryAdd(key, true))
            {
                _ = Task.Run(() => Check(job, photo, key));
            }
        }
    }

    /// <summary>A section's document with its measures. Documents never change under their names, so each is read once.</summary>
    public Result<MeasuredSection> Measured(JobSection section)
    {
        ArgumentNullException.ThrowIfNull(section);
        if (measured.TryGetValue(section.DocumentFile, out var known))
        {
            return known;
        }

        return Folder.Document(section).Then<MeasuredSection>(document =>
        {
            var read = new MeasuredSection(document, MeasuredOutline.Of(document.Section.Outline, document.Section.ErrorSources));
            return measured.GetOrAdd(section.DocumentFile, read);
        });
    }

    /// <summary>Tells everybody that something changed that is not part of the job: progress, a finished check.</summary>
    internal void Tell() => Changed?.Invoke(this, EventArgs.Empty);

    private static string CheckKey(PortingJob job, JobPhoto photo) => string.Create(
        CultureInfo.InvariantCulture, $"{photo.Id} {photo.ThicknessMm} {job.LensFile} {job.CheckBarAcrossMm} {job.CheckBarUpMm}");

    private void Check(PortingJob job, JobPhoto photo, string key)
    {
        try
        {
            checks[key] = JobDigitising.Settings(Folder, job, photo).TryGet(out var settings, out var problem)
                ? CheckPhotos.Run([Folder.PathOf(photo)], settings)[0]
                : new(photo.GivenName, null, problem);
        }
        finally
        {
            checking.TryRemove(key, out _);
        }

        Tell();
    }

    private bool Save(Func<JobHistory, JobHistory> change)
    {
        lock (gate)
        {
            var next = change(history);
            if (ReferenceEquals(next, history))
            {
                return true;
            }

            if (!Folder.Write(next).TryGet(out _, out var problem))
            {
                SaveProblem = problem;
            }
            else
            {
                history = next;
                SaveProblem = null;
            }
        }

        Tell();
        return SaveProblem is null;
    }
}
