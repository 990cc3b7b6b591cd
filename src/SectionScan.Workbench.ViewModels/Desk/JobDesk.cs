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

    /// <summary>The folder that holds the jobs.</summary>
    public string FolderPath => jobs.FullPath;

    /// <summary>The ids of all jobs, the one changed last first.</summary>
    public IReadOnlyList<string> Ids() => jobs.Ids();

    /// <summary>Begins a job.</summary>
    /// <returns>Its id.</returns>
    public Result<string> Begin(string name) => jobs.Begin(new() { Name = name.Trim() });

    /// <summary>Begins a job on the sample photographs.</summary>
    /// <returns>Its id.</returns>
    public async Task<Result<string>> BeginSampleAsync(CancellationToken stop) =>
        DemoPhotos.Find(null, sampleFolders).TryGet(out var folder, out var problem)
            ? await SampleJob.BeginAsync(jobs, folder, stop).ConfigureAwait(false)
            : problem;

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
                opened.BeginChecks();
                return opened;
            }));
        }
    }
}
