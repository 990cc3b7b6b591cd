using SectionScan.Jobs.Lenses;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>The lens of a job's camera, learnt from photos of the bare sheet.</summary>
public static class JobLens
{
    private const string Prefix = "lens-";

    /// <summary>Makes the profile and keeps it under a name that no other of the job ever had.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="job">The job: its check bars tell how true the sheet is; without them it is taken for true.</param>
    /// <param name="photos">Paths of the photos.</param>
    /// <returns>The profile's file below the job's folder, and why photos were left out.</returns>
    public static Result<LearntLens> Make(JobFolder folder, PortingJob job, IReadOnlyList<string> photos)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(job);
        var name = UnusedName.Next(folder.FullPath, Prefix) + ".json";
        return LensFiles.Make(photos, job.PrintRatio() ?? (1, 1), folder.PathOf(name)).Then<LearntLens>(made =>
            new LearntLens(name, made.LeftOut));
    }

    /// <summary>A lens that was learnt.</summary>
    /// <param name="File">The profile's file, below the job's folder.</param>
    /// <param name="LeftOut">Why photos were left out; empty when all were used.</param>
    public sealed record LearntLens(string File, IReadOnlyList<Problem> LeftOut);
}
