using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>A job document with the folder that its files lie in.</summary>
/// <param name="Path">The document's path, as named.</param>
/// <param name="Folder">Its folder.</param>
/// <param name="Job">The job.</param>
public sealed record JobFolder(string Path, string Folder, JobDocument Job)
{
    /// <summary>Reads a job and sees that every file it names is there.</summary>
    /// <returns>The job, or what is wrong with it first.</returns>
    public static Result<JobFolder> Open(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return TextFile.Read(path, JobDocumentFormat.MaximumBytes)
            .Then(text => JobDocumentFormat.Read(text, path))
            .Then(job =>
            {
                var folder = new JobFolder(path, System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path))!, job);
                return folder.Names().FirstOrDefault(name => !File.Exists(folder.PathOf(name))) is { } missing
                    ? JobProblems.FileMissing(path, missing)
                    : (Result<JobFolder>)folder;
            });
    }

    /// <summary>The full path of a file that the job names.</summary>
    public string PathOf(string name) => System.IO.Path.GetFullPath(System.IO.Path.Combine(Folder, name));

    /// <summary>Every file that the job names, each once.</summary>
    public IReadOnlyList<string> Names() => Job.Files();
}
