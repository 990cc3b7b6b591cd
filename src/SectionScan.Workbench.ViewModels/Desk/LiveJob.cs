using System.Collections.Concurrent;
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
    private readonly PhotoChecks checks;
    private volatile JobHistory history;

    internal LiveJob(string id, JobFolder folder, JobHistory history, string program)
    {
        Id = id;
        Folder = folder;
        this.history = history;
        checks = new(this);
        Program = program;
        Digitising = new(this, program);
    }

    /// <summary>Told after every change, on whichever thread made it.</summary>
    public event EventHandler? Changed;

    /// <summary>The job's id: the name of its folder.</summary>
    public string Id { get; }

    /// <summary>Its folder.</summary>
    public JobFolder Folder { get; }

    /// <summary>Name and version of the program, for documents.</summary>
    public string Program { get; }

    /// <summary>The job as it stands.</summary>
    public PortingJob Job => history.Present;

    /// <summary>The work that turns its photos into sections.</summary>
    public DigitisingRun Digitising { get; }

    /// <summary>What undo would take back, or null.</summary>
    public string? NextUndo => history.Past is [.., var last] ? last.What : null;

    /// <summary>What redo would do again, or null.</summary>
    public string? NextRedo => history.Future is [.., var next] ? next.What : null;

    /// <summary>Why the last change was not saved, or null.</summary>
    public Problem? SaveProblem { get; private set; }

    /// <summary>Begins the history anew with the job as it stands.</summary>
    /// <returns>True when it is saved.</returns>
    public bool ForgetSteps() => Save(now => JobHistory.Of(now.Present)) is null;

    /// <summary>Does a step.</summary>
    /// <param name="what">What is done, as an instruction.</param>
    /// <param name="change">From the job as it stands to the next one; the same one means that nothing is done.</param>
    /// <returns>True when it is done and saved.</returns>
    public bool Do(string what, Func<PortingJob, PortingJob> change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return Save(now => change(now.Present) is var next && ReferenceEquals(next, now.Present) ? now : now.Do(what, next)) is null;
    }

    /// <summary>Takes the last step back.</summary>
    public bool Undo() => Save(now => now.Undo()) is null;

    /// <summary>Does the step again that was taken back last.</summary>
    public bool Redo() => Save(now => now.Redo()) is null;

    /// <summary>Takes a photo in and begins to check it.</summary>
    /// <param name="content">The file's bytes; not trusted.</param>
    /// <param name="givenName">What the sender calls it; not trusted.</param>
    /// <param name="stop">Ends it.</param>
    public async Task<Result<JobPhoto>> TakePhotoAsync(Stream content, string givenName, CancellationToken stop)
    {
        var taken = await TakeAsync(content, givenName, isOfLens: false, stop).ConfigureAwait(false);
        if (taken.TryGet(out var photo, out _))
        {
            _ = CheckOf(photo);
        }

        return taken;
    }

    /// <summary>Takes a photo of the bare sheet in, to learn the lens from; see <see cref="TakePhotoAsync"/>.</summary>
    public Task<Result<JobPhoto>> TakeLensPhotoAsync(Stream content, string givenName, CancellationToken stop) =>
        TakeAsync(content, givenName, isOfLens: true, stop);

    /// <summary>Learns the lens from photos of the bare sheet, and uses it from then on.</summary>
    /// <param name="photos">Paths of the photos.</param>
    /// <returns>Why photos were left out; empty when all were used.</returns>
    public async Task<Result<IReadOnlyList<Problem>>> LearnLensAsync(IReadOnlyList<string> photos)
    {
        var job = Job;
        var made = await Task.Run(() => JobLens.Make(Folder, job, photos)).ConfigureAwait(false);
        return made.Then<IReadOnlyList<Problem>>(lens =>
            Save(now => now.Do("Learn the lens", now.Present with { LensFile = lens.File })) is { } problem ? problem : lens.LeftOut.ToList());
    }

    /// <summary>What the check of a photo found, or null while it is not finished; a check that nobody asked for yet begins.</summary>
    public CheckOutcome? CheckOf(JobPhoto photo)
    {
        ArgumentNullException.ThrowIfNull(photo);
        return checks.Of(Job, photo);
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

    private async Task<Result<JobPhoto>> TakeAsync(Stream content, string givenName, bool isOfLens, CancellationToken stop)
    {
        var isFull = IsFull(Job);
        if (isFull)
        {
            return JobProblems.TooManyPhotos(PhotoIntake.MostPhotos);
        }

        var taken = await PhotoIntake.TakeAsync(Folder, content, givenName, stop, isOfLens).ConfigureAwait(false);
        if (!taken.TryGet(out var photo, out var problem))
        {
            return problem;
        }

        problem = Save(now =>
        {
            var job = now.Present;
            isFull = IsFull(job);
            if (isFull)
            {
                return now;
            }

            if (isOfLens)
            {
                return now.Do($"Add {photo.GivenName} for the lens", job with { LensPhotos = [.. job.LensPhotos, photo] });
            }

            // Photos that come one after another mostly show the same thing.
            var last = job.Photos.Count > 0 ? job.Photos[^1] : null;
            photo = photo with { Stage = last?.Stage ?? string.Empty, ThicknessMm = last?.ThicknessMm };
            return now.Do($"Add {photo.GivenName}", job with { Photos = [.. job.Photos, photo] });
        });
        problem = isFull ? JobProblems.TooManyPhotos(PhotoIntake.MostPhotos) : problem;
        if (problem is not null)
        {
            File.Delete(Folder.PathOf(photo));
            return problem;
        }

        return photo;
    }

    private static bool IsFull(PortingJob job) => job.Photos.Count + job.LensPhotos.Count >= PhotoIntake.MostPhotos;

    /// <summary>Changes the job and its file together.</summary>
    /// <returns>Why the change was not made, or null.</returns>
    private Problem? Save(Func<JobHistory, JobHistory> change)
    {
        Problem? problem = null;
        lock (gate)
        {
            var next = change(history);
            if (ReferenceEquals(next, history))
            {
                return null;
            }

            if (Folder.Write(next).TryGet(out var written, out problem))
            {
                history = written;
            }

            SaveProblem = problem;
        }

        Tell();
        return problem;
    }
}
