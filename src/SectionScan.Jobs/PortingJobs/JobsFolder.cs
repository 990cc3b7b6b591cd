using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>The folder that holds all jobs of a shop, each in a folder of its own.</summary>
public sealed class JobsFolder
{
    private const int MostJobsOfAName = 10_000;
    private const string LockName = "workbench.lock";

    private readonly OutputFolder folder;
    private readonly Lock gate = new();

    private JobsFolder(OutputFolder folder) => this.folder = folder;

    /// <summary>The folder's full path.</summary>
    public string FullPath => folder.FullPath;

    /// <summary>Opens or makes the folder.</summary>
    public static Result<JobsFolder> Open(string path) => OutputFolder.Open(path).Then<JobsFolder>(folder => new JobsFolder(folder));

    /// <summary>Keeps every other workbench off the folder for as long as what is returned is not disposed, or until the process ends,
    /// however it ends: two of them would overwrite each other's jobs.</summary>
    public Result<FileStream> Hold()
    {
        var path = Path.Combine(FullPath, LockName);
        try
        {
            return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (UnauthorizedAccessException e)
        {
            return FileProblems.CannotWrite(path, e.Message);
        }
        catch (IOException e)
        {
            return File.Exists(path) ? JobProblems.FolderInUse(FullPath) : FileProblems.CannotWrite(path, e.Message);
        }
    }

    /// <summary>The ids of all jobs, the one changed last first.</summary>
    public IReadOnlyList<string> Ids() => [.. new DirectoryInfo(FullPath).EnumerateDirectories()
        .Where(each => JobFolder.HoldsJob(each.FullName))
        .OrderByDescending(each => File.GetLastWriteTimeUtc(Path.Combine(each.FullName, "job.json"))).ThenBy(each => each.Name, StringComparer.Ordinal)
        .Select(each => each.Name)];

    /// <summary>Begins a job.</summary>
    public Result<string> Begin(PortingJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (string.IsNullOrWhiteSpace(job.Name))
        {
            return JobProblems.NameMissing();
        }

        lock (gate)
        {
            // The name is a person's: what is left of it after FileNames.Safe leads nowhere else.
            var stem = FileNames.Safe(job.Name.Trim().ToLowerInvariant());
            var id = Enumerable.Range(1, MostJobsOfAName)
                .Select(n => n == 1 ? stem : FormattableString.Invariant($"{stem}-{n}"))
                .First(name => !Path.Exists(Path.Combine(FullPath, name)));
            return JobFolder.Open(Path.Combine(FullPath, id)).Then(made => made.Write(JobHistory.Of(job))).Then<string>(_ => id);
        }
    }

    /// <summary>A job as it stands, without opening it.</summary>
    /// <param name="id">One of <see cref="Ids"/>.</param>
    public Result<PortingJob> Look(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        return Ids().Contains(id, StringComparer.Ordinal) ? JobFolder.ReadPresent(Path.Combine(FullPath, id)) : JobProblems.NotFound(id);
    }

    /// <summary>Opens a job's folder.</summary>
    /// <param name="id">One of <see cref="Ids"/>; anything else is not found, whatever it looks like.</param>
    public Result<JobFolder> Find(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        return Ids().Contains(id, StringComparer.Ordinal) ? JobFolder.Open(Path.Combine(FullPath, id)) : JobProblems.NotFound(id);
    }
}
