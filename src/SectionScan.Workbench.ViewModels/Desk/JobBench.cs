using System.Runtime.CompilerServices;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Cutting;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Jobs.Proving;
using SectionScan.Jobs.TargetShapes;
using SectionScan.Jobs.Templates;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Workbench.ViewModels.Desk;

/// <summary>What is worked out of one open job: its targets, its cut plan, its templates, its proof. Each is worked out once for each state
/// of the job, and all windows and downloads share it.</summary>
public sealed class JobBench
{
    private readonly LiveJob live;
    private readonly JobDesk desk;
    private readonly Lock gate = new();
    private readonly Dictionary<int, Result<SettledTarget>> settled = [];
    private readonly ConditionalWeakTable<SectionInput, MeasuredOutline> measured = [];
    private readonly Kept<Result<JobTarget>> ports = new();
    private readonly Kept<Result<IReadOnlyList<SettledTarget>>> targets = new();
    private readonly Kept<Result<CutPlan>> plan = new();
    private readonly Kept<Result<TemplateSet>> templates = new();
    private readonly Kept<Result<PortProof>> proof = new();
    private (JobTarget? Ports, TargetSettings? Settings) settledFor;

    internal JobBench(LiveJob live, JobDesk desk)
    {
        this.live = live;
        this.desk = desk;
    }

    /// <summary>Both ports, or why they cannot be put together; null while they are not chosen.</summary>
    public Result<JobTarget>? Ports()
    {
        var job = live.Job;
        return job.Target.IsChosen
            ? ports.For((SectionsKey(job), job.Target.Own, job.Target.Reference, job.WallsFile), () => JobTarget.Read(live.Folder, job, desk.LibraryPath, desk.Time))
            : null;
    }

    /// <summary>Settles the target of one station.</summary>
    /// <param name="target">The ports, as <see cref="Ports"/> gave them.</param>
    /// <param name="at">The station's place among the pairs.</param>
    /// <param name="settings">With what.</param>
    public Result<SettledTarget> Settle(JobTarget target, int at, TargetSettings settings)
    {
        ArgumentNullException.ThrowIfNull(target);
        lock (gate)
        {
            if (ReferenceEquals(settledFor.Ports, target) && ReferenceEquals(settledFor.Settings, settings) && settled.TryGetValue(at, out var known))
            {
                return known;
            }
        }

        var made = target.Settle(at, settings, live.Program);
        if (!ReferenceEquals(settings, live.Job.Target))
        {
            return made; // a hand on a slider: not worth keeping
        }

        lock (gate)
        {
            if (!ReferenceEquals(settledFor.Ports, target) || !ReferenceEquals(settledFor.Settings, settings))
            {
                settled.Clear();
                settledFor = (target, settings);
            }

            settled[at] = made;
        }

        return made;
    }

    /// <summary>The targets as the job keeps them, station by station.</summary>
    /// <returns>One or more; or the first problem that stands in the way; null while no ports are chosen.</returns>
    public Result<IReadOnlyList<SettledTarget>>? Targets()
    {
        var settings = live.Job.Target;
        return Ports()?.Then(target => targets.For((target, settings), () => All(target, settings)));
    }

    /// <summary>The cut plan; null while no ports are chosen.</summary>
    /// <param name="isInch">True to label lengths in inches.</param>
    public Result<CutPlan>? Plan(bool isInch)
    {
        var job = live.Job;
        return Ports()?.Then(both => Targets()!.Then(all => plan.For(
            (all, job.Cut, job.Head, job.Port, isInch), () => JobCut.Plan(job, both, all, isInch))));
    }

    /// <summary>The templates; null while no ports are chosen.</summary>
    /// <param name="isInch">True for inches in captions and in the DXF.</param>
    public Result<TemplateSet>? Templates(bool isInch)
    {
        var job = live.Job;
        return Targets()?.Then(all => templates.For(
            (all, job.Cut, job.Head, job.Port, job.PrintRatio(), isInch), () => JobCut.Templates(job, all, isInch)));
    }

    /// <summary>The proof of the finished port; null while too little is chosen.</summary>
    public Result<PortProof>? Proof()
    {
        var job = live.Job;
        if (job.Proof.Finished is null)
        {
            return null;
        }

        if (job.Proof.Target != ProofSettings.SettledTarget)
        {
            return proof.For((SectionsKey(job), job.Proof), () => JobProving.Of(live.Folder, job, null, desk.LibraryPath, desk.Time));
        }

        return Targets()?.Then(all => proof.For((SectionsKey(job), job.Proof, all), () => JobProving.Of(live.Folder, job, all, desk.LibraryPath, desk.Time)));
    }

    /// <summary>The measures of a measured section; each section is measured once.</summary>
    public MeasuredOutline Measured(SectionInput section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return measured.GetValue(section, each => MeasuredOutline.Of(each.Outline, each.ErrorSources));
    }

    private static string SectionsKey(PortingJob job) => string.Join('\n', job.Sections.Select(section => $"{section.DocumentFile} {job.NameOf(section)}"));

    private Result<IReadOnlyList<SettledTarget>> All(JobTarget target, TargetSettings settings) =>
        Result.All(Enumerable.Range(0, target.Pairs.Count).Select(at => Settle(target, at, settings)));
}
