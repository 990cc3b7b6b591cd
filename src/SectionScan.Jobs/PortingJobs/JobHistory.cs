namespace SectionScan.Jobs.PortingJobs;

/// <summary>A job with the steps that led to it and those that were taken back. Immutable.</summary>
/// <param name="Present">The job as it stands.</param>
/// <param name="Past">Earlier states, the latest last, each with what was done to it.</param>
/// <param name="Future">States taken back, the next one last, each with what led to it.</param>
public sealed record JobHistory(PortingJob Present, IReadOnlyList<JobHistory.DoneStep> Past, IReadOnlyList<JobHistory.DoneStep> Future)
{
    /// <summary>The most steps that are kept.</summary>
    public const int MostSteps = 100;

    /// <summary>A job without a past.</summary>
    public static JobHistory Of(PortingJob job) => new(job, [], []);

    /// <summary>Goes on to another state; what was taken back is gone.</summary>
    /// <param name="what">What is done, as an instruction: "Set the thickness of photo-1".</param>
    /// <param name="next">The next state.</param>
    public JobHistory Do(string what, PortingJob next) => new(next, [.. Past.TakeLast(MostSteps - 1), new(what, Present)], []);

    /// <summary>Every state that it holds.</summary>
    public IEnumerable<PortingJob> States() => Past.Concat(Future).Select(step => step.Job).Append(Present);

    /// <summary>True while steps are kept that can be forgotten.</summary>
    public bool HasSteps => Past.Count + Future.Count > 0;

    /// <summary>The same job with the steps farthest from the present forgotten, half of each side.</summary>
    public JobHistory Shortened() => this with
    {
        Past = [.. Past.TakeLast(Past.Count / 2)],
        Future = [.. Future.TakeLast(Future.Count / 2)],
    };

    /// <summary>Takes the last step back; the same when there is none.</summary>
    public JobHistory Undo() => Past.Count == 0
        ? this
        : new(Past[^1].Job, [.. Past.SkipLast(1)], [.. Future, new(Past[^1].What, Present)]);

    /// <summary>Does the step again that was taken back last; the same when there is none.</summary>
    public JobHistory Redo() => Future.Count == 0
        ? this
        : new(Future[^1].Job, [.. Past, new(Future[^1].What, Present)], [.. Future.SkipLast(1)]);

    /// <summary>One step.</summary>
    /// <param name="What">What was done.</param>
    /// <param name="Job">The state on its other side.</param>
    public sealed record DoneStep(string What, PortingJob Job);
}
