using System.Runtime.CompilerServices;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>The bench of each open job.</summary>
public sealed class JobBenches(JobDesk desk)
{
    private readonly ConditionalWeakTable<LiveJob, JobBench> benches = [];

    /// <summary>The bench of a job; null without a job.</summary>
    public JobBench? Of(LiveJob? live) => live is null ? null : benches.GetValue(live, each => new(each, desk));
}
