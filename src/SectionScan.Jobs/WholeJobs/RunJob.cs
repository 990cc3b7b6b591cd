using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Summaries;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Lenses;
using SectionScan.Jobs.Progress;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>Runs a job from its photos to its report.</summary>
public static class RunJob
{
    /// <summary>The lens profile's file name when the job makes one.</summary>
    public const string LensName = "camera.lens.json";

    // Comparisons, report and record.
    private const int StepsAfterPhotos = 3;

    /// <summary>Runs it.</summary>
    /// <param name="order">Which job, and where to.</param>
    /// <param name="progress">Told of each photo and each step after them.</param>
    /// <param name="stop">Ends it between steps; files that are finished stay, report and record are written last.</param>
    /// <returns>What was made, or the first thing that stood in the way.</returns>
    public static Result<JobRun> Run(JobOrder order, IProgress<JobProgress>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(order);
        return JobFolder.Open(order.JobPath).Then(source => OutputFolder.Open(order.OutputFolder).Then(folder =>
        {
            var photos = (source.Job.Lens?.Photos.Count ?? 0) + source.Job.Ports.Sum(port => port.Photos.Count);
            var steps = new StepCounter(photos + StepsAfterPhotos + JobWorking.StepsOf(source.Job), progress);
            var written = new List<string>();
            return Study(order, source, folder, steps, written, stop).Then(outcome => Finish(order, folder, outcome, steps, written));
        }));
    }

    private static Result<JobOutcome> Study(
        JobOrder order, JobFolder source, OutputFolder folder, StepCounter steps, List<string> written, CancellationToken stop)
    {
        LensProfile? lens = null;
        if (source.Job.Lens is not null && !Lens(source, folder, steps, written).TryGet(out lens, out var problem))
        {
            return problem;
        }

        var ports = new List<StudiedPort>();
        foreach (var plan in source.Job.Ports)
        {
            stop.ThrowIfCancellationRequested();
            if (!PortStudying.Study(order, source, plan, lens, folder, steps, stop).TryGet(out var studied, out problem))
            {
                return problem;
            }

            written.AddRange(studied.Files);
            ports.Add(studied.Port);
        }

        if (!Result.All(source.Job.Comparisons.Select(each => Compare(source, each, ports))).TryGet(out var comparisons, out problem))
        {
            return problem;
        }

        steps.Report("comparisons");
        stop.ThrowIfCancellationRequested();
        var working = new JobWorking(order, source, ports, lens, folder);
        return working.Do(steps).Then<JobOutcome>(work =>
        {
            written.AddRange(working.Written);
            return new JobOutcome(source, lens, ports, comparisons, work);
        });
    }

    private static Result<PortComparison> Compare(JobFolder source, JobComparison asked, List<StudiedPort> ports)
    {
        var (reference, measured) = (ports.First(port => port.Plan.Name == asked.With), ports.First(port => port.Plan.Name == asked.Port));
        var stations = PortComparison.StationsOfBoth(reference, measured);
        return asked.ByHand?.FirstOrDefault(hand => !stations.Contains(hand.Station)) is { } lost
            ? JobProblems.StationNotShared($"{source.Path}, comparison of \"{asked.Port}\"", lost.Station, stations)
            : PortComparison.Of(reference, measured, asked.ByHand);
    }

    private static Result<LensProfile> Lens(JobFolder source, OutputFolder folder, StepCounter steps, List<string> written)
    {
        var plan = source.Job.Lens!;
        if (plan.Profile is { } file)
        {
            return LensFiles.Read(source.PathOf(file));
        }

        var ratio = PrintRatio(source) ?? (1, 1);
        var path = Path.Combine(folder.FullPath, LensName);
        written.Add(path);
        return LensFiles.Make([.. plan.Photos.Select(source.PathOf)], ratio, path, new Passed(steps))
            .Then(made => made.LeftOut.Count > 0 ? made.LeftOut[0] : (Result<LensProfile>)made.Profile);
    }

    internal static (double X, double Y)? PrintRatio(JobFolder source) =>
        source.Job.PrintRatio is { } ratio ? (ratio[0], ratio[1]) : null;

    private static Result<JobRun> Finish(JobOrder order, OutputFolder folder, JobOutcome outcome, StepCounter steps, List<string> written)
    {
        var report = new JobReport(outcome, order.Program, order.Unit).Build();
        var stem = FileNames.Safe(outcome.Source.Job.Name);
        var files = new List<(string, Action<Stream>)>
        {
            (stem + ".report.html", stream => SummaryWriter.Write(report, stream)),
            (stem + ".report.pdf", stream => PdfWriter.Write(SummaryPaper.Layout(report, PaperSize.A4), stream, report.Title, isCompressed: true)),
        };
        var earlier = JobRecord.Earlier(folder.FullPath);
        return folder.WriteAll(files).Then(paths =>
        {
            steps.Report("report");
            written.AddRange(paths);
            return JobRecord.Of(outcome.Source, folder.FullPath, written, order.Program).Then(record =>
                folder.Write(JobRecord.FileName, record.Write()).Then<JobRun>(_ =>
                {
                    steps.Report("record");
                    return new JobRun(outcome, paths[0], paths[1], record, record.Against(earlier));
                }));
        });
    }

    /// <summary>Lets the parts of the job count toward the whole.</summary>
    internal sealed class Passed(StepCounter steps) : IProgress<JobProgress>
    {
        public void Report(JobProgress value) => steps.Report(value.What);
    }
}
