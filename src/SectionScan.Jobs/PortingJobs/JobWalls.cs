using SectionScan.Jobs.Cutting;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>Keeps what lies behind the walls of a job's port as the table that the walls command reads: one file for each state, so that
/// an earlier state of the job still finds its own.</summary>
public static class JobWalls
{
    private const string FolderName = "walls";

    /// <summary>Reads the walls of a job.</summary>
    public static Result<PortWalls> Read(JobFolder folder, PortingJob job)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(job);
        return job.WallsFile is { } file ? WallsReport.ReadWalls(folder.PathOf(file)) : PortWalls.None;
    }

    /// <summary>Writes walls.</summary>
    /// <returns>Their file's name within the job's folder.</returns>
    public static Result<string> Keep(JobFolder folder, PortWalls walls)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(walls);
        var text = PortWallsCsv.Write(walls);
        var name = $"walls-{TextFile.Sha256Of(text)[..16]}.csv";
        return OutputFolder.Open(folder.PathOf(FolderName)).Then(open => open.Write(name, text)).Then<string>(_ => Path.Combine(FolderName, name));
    }
}
