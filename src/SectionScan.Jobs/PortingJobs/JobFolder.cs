using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>The folder of one job: its file, its photos, its section documents. Every name in it is ours.</summary>
public sealed class JobFolder
{
    private const string FileName = "job.json";
    private const string PhotosName = "photos";

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
        return TextFile.Read(path, JobHistoryFormat.MaximumBytes).Then(text => JobHistoryFormat.Read(text, path));
    }

    /// <summary>Writes the job with its history, whole or not at all.</summary>
    public Result<string> Write(JobHistory history) => folder.Write(FileName, JobHistoryFormat.Write(history));

    /// <summary>The full path of a file that the job names. What the job's file says is checked like what a stranger says: it stays
    /// within the folder.</summary>
    /// <exception cref="ArgumentException">The name leads out of the folder.</exception>
    public string PathOf(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var full = Path.GetFullPath(Path.Combine(FullPath, name));
        return full.StartsWith(FullPath + Path.DirectorySeparatorChar, StringComparison.Ordinal)
            ? full
            : throw new ArgumentException($"{name} leads out of the job's folder.", nameof(name));
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
}
