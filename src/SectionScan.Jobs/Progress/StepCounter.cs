namespace SectionScan.Jobs.Progress;

/// <summary>Counts finished inputs, from whichever thread, and passes on how far the job has come.</summary>
internal sealed class StepCounter(int total, IProgress<JobProgress>? progress) : IProgress<string>
{
    private int done;

    /// <inheritdoc/>
    public void Report(string value) => progress?.Report(new(Interlocked.Increment(ref done), total, value));
}
