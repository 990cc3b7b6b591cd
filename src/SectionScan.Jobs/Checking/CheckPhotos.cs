using SectionScan.Imaging.Checks;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Progress;

namespace SectionScan.Jobs.Checking;

/// <summary>Checks photos before they are measured.</summary>
public static class CheckPhotos
{
    /// <summary>Looks at each photo.</summary>
    /// <param name="photos">The photos.</param>
    /// <param name="settings">Lens, print ratio and thickness, as for digitising.</param>
    /// <param name="progress">Told of each photo.</param>
    /// <param name="stop">Ends the batch.</param>
    /// <returns>One outcome for each photo, in the order given.</returns>
    public static IReadOnlyList<CheckOutcome> Run(
        IReadOnlyList<string> photos, DigitiseSettings settings, IProgress<JobProgress>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(photos);
        var steps = new StepCounter(photos.Count, progress);
        var outcomes = new CheckOutcome[photos.Count];
        var options = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = stop };
        Parallel.For(0, outcomes.Length, options, i =>
        {
            outcomes[i] = PhotoCheck.Look(photos[i], settings).TryGet(out var report, out var problem)
                ? new(photos[i], report, null)
                : new(photos[i], null, problem);
            steps.Report(Path.GetFileName(photos[i]));
        });
        return outcomes;
    }
}
