using SectionScan.Jobs.Demo;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Results;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>All jobs of the shop; the open ones live here, one object each, however many windows show them.</summary>
public sealed class JobDesk
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, LiveJob> open = new(StringComparer.Ordinal);
    private readonly JobsFolder jobs;
    private readonly IReadOnlyList<string> sampleFolders;
    private readonly string program;

    /// <summary>Makes the desk.</summary>
    /// <param name="jobs">Where jobs are kept.</param>
    /// <param name="libraryPath">The reference section library's file.</param>
    /// <param name="sampleFolders">Where, or above where, the sample photographs may lie.</param>
    /// <param name="program">Name and version of the program, for documents.</param>
    /// <param name="time">The clock.</param>
    public JobDesk(JobsFolder jobs, string libraryPath, IReadOnlyList<string> sampleFolders, string program, TimeProvider time)
    {
        this.jobs = jobs;
        this.sampleFolders = sampleFolders;
        this.program = program;
        LibraryPath = libraryPath;
        Time = time;
    }

    /// <summary>The library's file.</summary>
    public string LibraryPath { get; }

    /// <summary>The clock.</summary>
    public TimeProvider Time { get; }

    /// <summary>Told when the library holds something else than before, on whichever thread changed it.</summary>
    public event EventHandler? LibraryChanged;

    /// <summary>Tells everybody that the library was changed.</summary>
    public void TellLibraryChanged() => LibraryChanged?.Invoke(this, EventArgs.Empty);

    /// <summary>The folder that holds the jobs.</summary>
    public string FolderPath => jobs.FullPath;

    /// <summary>The ids of all jobs, the one changed last first.</summary>
    public IReadOnlyList<string> Ids() => jobs.Ids();

    /// <summary>Begins a job.</summary>
    /// <returns>Its id.</returns>
    public Result<string> Begin(string name) => jobs.Begin(new() { Name = name.Trim() });

    /// <summary>Begins a job on the sample photographs, by the same steps that a person would take.</summary>
    /// <returns>Its id.</returns>
    public async Task<Result<string>> BeginSampleAsync(CancellationToken stop)
    {
        if (!DemoPhotos.Find(null, sampleFolders).TryGet(out var folder, out var problem)
            || !jobs.Begin(SampleJob.Begun).TryGet(out var id, out problem) || !Open(id).TryGet(out var live, out problem))
        {
            return problem;
        }

        var learnt = await live.LearnLensAsync([.. SampleJob.LensPhotos.Select(name => Path.Combine(folder, name))]).ConfigureAwait(false);
        if (!learnt.TryGet(out var leftOut, out problem) || leftOut.Count > 0)
        {
            return problem ?? leftOut![0];
        }

        foreach (var sample in SampleJob.Photos)
        {
            var content = File.OpenRead(Path.Combine(folder, sample.File));
            await using (content.ConfigureAwait(false))
            {
                if (!(await live.TakePhotoAsync(content, sample.File, stop).ConfigureAwait(false)).TryGet(out var photo, out problem))
                {
                    return problem;
                }

                live.Do("Set up the sample", job => job.With(photo with { Stage = sample.Stage, ThicknessMm = sample.ThicknessMm }));
            }
        }

        // The sample begins here: taking back goes no further.
        live.ForgetSteps();
        return id;
    }

    /// <summary>A job as it stands, for a list: it is not opened, and none of its photos is touched.</summary>
    /// <param name="id">One of <see cref="Ids"/>.</param>
    public Result<PortingJob> Look(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        lock (gate)
        {
            return open.TryGetValue(id, out var live) ? live.Job : jobs.Look(id);
        }
    }

    /// <summary>Opens a job; a job that is open already is the same for everybody.</summary>
    /// <param name="id">One of <see cref="Ids"/>.</param>
    public Result<LiveJob> Open(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        lock (gate)
        {
            if (open.TryGetValue(id, out var live))
            {
                return live;
            }

            return jobs.Find(id).Then(folder => folder.Read().Then<LiveJob>(history =>
            {
                var opened = new LiveJob(id, folder, history, program);
                open[id] = opened;
                return opened;
            }));
        }
    }
}
