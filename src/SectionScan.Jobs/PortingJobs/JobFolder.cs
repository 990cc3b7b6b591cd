using System.Text;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>The folder of one job: its file, its photos, its section documents. Every name in it is ours.</summary>
public sealed class JobFolder
{
    /// <summary>Name of the folder of its photos.</summary>
    internal const string PhotosName = "photos";

    private const string FileName = "job.json";

    private readonly OutputFolder folder;

    private JobFolder(OutputFolder folder) => this.folder = folder;

    /// <summary>The folder's full path.</summary>
    public string FullPath => folder.FullPath;

    /// <summary>Where its photos lie.</summary>
    public string PhotosPath => Path.Combine(FullPath, PhotosName);

    /// <summary>Opens or makes the folder.</summary>
    public static Result<JobFolder> Open(string path) => OutputFolder.Open(path).Then(folder =>
        OutputFolder.Open(Path.Combine(folder.FullPath, PhotosName)).Then<JobFolder>(_ => new JobFolder(folder)));

    /// <summary>True when a job lies in the folder.</summary>
    public static bool HoldsJob(string path) => File.Exists(Path.Combine(path, FileName));

    /// <summary>Reads the job with its history.</summary>
    public Result<JobHistory> Read()
    {
        var path = Path.Combine(FullPath, FileName);
        return TextFile.Read(path, JobHistoryFormat.MaximumBytes).Then(text => JobHistoryFormat.Read(text, path)).Then(history =>
            history.States().Select(OddName).FirstOrDefault(name => name is not null) is { } odd
                ? JobProblems.Damaged(path, $"it names \"{odd}\", which is not in the job's folder")
                : (Result<JobHistory>)history);
    }

    /// <summary>Reads the job as it stands and leaves its history.</summary>
    /// <param name="path">A job's folder.</param>
    public static Result<PortingJob> ReadPresent(string path)
    {
        var file = Path.Combine(path, FileName);
        return TextFile.Read(file, JobHistoryFormat.MaximumBytes).Then(text => JobHistoryFormat.ReadPresent(text, file));
    }

    /// <summary>Writes the job with its history, whole or not at all.</summary>
    /// <returns>What was written: a history that grew too long has lost its farthest steps, never the job itself.</returns>
    public Result<JobHistory> Write(JobHistory history)
    {
        ArgumentNullException.ThrowIfNull(history);
        var text = JobHistoryFormat.Write(history);
        while (Encoding.UTF8.GetByteCount(text) > JobHistoryFormat.UsualBytes && history.HasSteps)
        {
            history = history.Shortened();
            text = JobHistoryFormat.Write(history);
        }

        return Encoding.UTF8.GetByteCount(text) > JobHistoryFormat.MaximumBytes
            ? JobProblems.TooLarge(FullPath)
            : folder.Write(FileName, text).Then<JobHistory>(_ => history);
    }

    /// <summary>The full path of a file that the job names.</summary>
    /// <exception cref="ArgumentException">The name leads out of the folder; <see cref="Read"/> lets no such job in.</exception>
    public string PathOf(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return IsWithin(name) ? Full(name) : throw new ArgumentException($"{name} leads out of the job's folder.", nameof(name));
    }

    /// <summary>The full path of a photo.</summary>
    public string PathOf(JobPhoto photo)
    {
        ArgumentNullException.ThrowIfNull(photo);
        return PathOf(Path.Combine(PhotosName, photo.File));
    }

    /// <summary>Reads a section's document.</summary>
    public Result<SectionDocument> Document(JobSection section)
    {
        ArgumentNullException.ThrowIfNull(section);
        var path = PathOf(section.DocumentFile);
        return TextFile.Read(path, SectionDocumentFormat.MaximumBytes).Then(text => SectionDocumentFormat.Read(text, path));
    }

    /// <summary>The first name in a job that leads elsewhere, or null. A job's file is checked like what a stranger says.</summary>
    private string? OddName(PortingJob job)
    {
        var (files, ids) = job.Names();
        var own = job.WallsFile is { } walls ? files.Append(walls) : files;
        return own.FirstOrDefault(file => !IsWithin(file)) ?? ids.FirstOrDefault(id => !id.All(c => char.IsAsciiLetterOrDigit(c) || c == '-'));
    }

    private bool IsWithin(string name) => !name.Contains('\0', StringComparison.Ordinal)
        && Full(name).StartsWith(FullPath + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    private string Full(string name) => Path.GetFullPath(Path.Combine(FullPath, name));
}
