using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Documents;

/// <summary>What must hold in the work of a job: comparisons, plans, proofs and joints.</summary>
internal static class JobWorkRules
{
    private const double MostMm = 10;

    public static Problem? FirstProblem(JobDocument job, string where)
    {
        var ports = job.Comparisons.SelectMany(each => new[] { each.Port, each.With })
            .Concat(job.Plans.Select(each => each.Port)).Concat(job.Proofs.Select(each => each.Port)).Concat(job.Joints.Select(each => each.Port))
            .Concat(job.Plans.Select(each => each.Toward).Concat(job.Proofs.Select(each => each.Against)).Where(name => name != JobPlan.Targets || job.Targets.Count == 0));
        if (ports.FirstOrDefault(name => job.Ports.All(port => port.Name != name)) is { } unknown)
        {
            return JobDocumentProblems.PortUnknown(where, unknown, job.Ports.Select(port => port.Name).Concat(job.Targets.Count > 0 ? [JobPlan.Targets] : []));
        }

        var hands = job.Comparisons.Select(each => each.ByHand ?? []).ToList();
        return hands.Any(each => each.Any(hand => !hand.Move().IsUsable)) ? JobDocumentProblems.FieldUnusable(
                where, "comparisons, byHand", FormattableString.Invariant($"millimetres from -{HandMove.MostMm:0} to {HandMove.MostMm:0} and degrees from -180 to 180"))
            : hands.Any(each => each.DistinctBy(hand => hand.Station).Count() < each.Count) ? JobDocumentProblems.FieldUnusable(where, "comparisons, byHand", "each station once")
            : job.Plans.Any(plan => !(plan.AllowanceMm is >= 0 and <= MostMm)) ? JobDocumentProblems.FieldUnusable(where, "plans, allowanceMm", "millimetres from 0 to 10")
            : job.Proofs.Any(proof => !(proof.InsideMm is >= 0 and <= MostMm && proof.OutsideMm is >= 0 and <= MostMm))
                ? JobDocumentProblems.FieldUnusable(where, "proofs, insideMm and outsideMm", "millimetres from 0 to 10")
            : job.Joints.Select(joint => JobJointRules.FirstProblem(joint, where)).FirstOrDefault(problem => problem is not null);
    }
}
