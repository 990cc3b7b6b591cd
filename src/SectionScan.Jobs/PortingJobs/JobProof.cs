using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Proving;
using SectionScan.Jobs.TargetShapes;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>The proof of a job's finished port.</summary>
/// <param name="Proved">The sections proved; one or more.</param>
/// <param name="Unproved">Why others are not.</param>
public sealed record JobProof(IReadOnlyList<ProvedSection> Proved, IReadOnlyList<Problem> Unproved)
{
    /// <summary>Proves the finished port as the prove command does.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="job">The job; its finished port chosen.</param>
    /// <param name="targets">The job's targets; null to prove against another port.</param>
    /// <param name="libraryPath">The library's file.</param>
    /// <param name="time">The clock.</param>
    public static Result<JobProof> Of(
        JobFolder folder, PortingJob job, IReadOnlyList<SettledTarget>? targets, string libraryPath, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(job);
        var against = targets is null
            ? JobPorts.Read(folder, job, job.Proof.Target, libraryPath, time)
            : targets.Select(JobCut.AsSection).ToList();
        if (!against.TryGet(out var wanted, out var problem)
            || !JobPorts.Read(folder, job, job.Proof.Finished!, libraryPath, time).TryGet(out var finished, out problem)
            || !SectionFiles.Paired(wanted, finished).TryGet(out var paired, out problem))
        {
            return problem;
        }

        var (proved, unproved) = (new List<ProvedSection>(), paired.Alone.Select(section => ComparingProblems.StationAlone(section.Name)).ToList());
        var terms = job.Proof.Terms();
        foreach (var (target, section) in paired.Pairs)
        {
            if (ProvedSection.Of(target, section, terms).TryGet(out var proof, out problem))
            {
                proved.Add(proof);
            }
            else
            {
                unproved.Add(problem);
            }
        }

        return proved.Count > 0 ? new JobProof(proved, unproved) : unproved[^1];
    }
}
