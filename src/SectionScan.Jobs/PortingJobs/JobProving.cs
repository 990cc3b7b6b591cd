using SectionScan.Jobs.Proving;
using SectionScan.Jobs.TargetShapes;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>Proves the finished port of a job.</summary>
public static class JobProving
{
    /// <summary>Proves the finished port as the prove command does.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="job">The job; its finished port chosen.</param>
    /// <param name="targets">The job's targets; null to prove against another port.</param>
    /// <param name="libraryPath">The library's file.</param>
    /// <param name="time">The clock.</param>
    /// <returns>One proved section or more; or why there is none.</returns>
    public static Result<PortProof> Of(
        JobFolder folder, PortingJob job, IReadOnlyList<SettledTarget>? targets, string libraryPath, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(job);
        var against = targets is null
            ? JobPorts.Read(folder, job, job.Proof.Target, libraryPath, time)
            : targets.Select(JobCut.AsSection).ToList();
        if (!against.TryGet(out var wanted, out var problem)
            || !JobPorts.Read(folder, job, job.Proof.Finished!, libraryPath, time).TryGet(out var finished, out problem)
            || !PortProof.Of(wanted, finished, job.Proof.Terms()).TryGet(out var proof, out problem))
        {
            return problem;
        }

        return proof.Proved.Count > 0 ? proof : proof.Unproved[^1];
    }
}
