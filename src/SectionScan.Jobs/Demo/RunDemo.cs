using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Summaries;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Lenses;
using SectionScan.Jobs.Progress;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Demo;

/// <summary>The whole path of the main job on the sample photographs: lens profile, outlines, library, comparisons, one page.</summary>
public static class RunDemo
{
    /// <summary>The page's file name.</summary>
    public const string PageName = "index.html";

    /// <summary>The lens profile's file name.</summary>
    public const string LensName = "phone.lens.json";

    private const string ComparisonsFolder = "comparisons";

    /// <summary>Runs it.</summary>
    /// <param name="order">What on, and where to.</param>
    /// <param name="progress">Told of each step.</param>
    /// <param name="stop">Ends it between steps; files that are finished stay, the page is written last.</param>
    /// <returns>What was made, or the first thing that stood in the way.</returns>
    public static Result<DemoOutcome> Run(DemoOrder order, IProgress<JobProgress>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(order);
        var photos = DemoScenario.LensPhotos.Count + DemoScenario.Ports.Sum(port => port.Photos.Count);
        const int StepsAfterPhotos = 3;
        var steps = new StepCounter(photos + StepsAfterPhotos, progress);
        return OutputFolder.Open(order.OutputFolder).Then(folder =>
            MakeLens(order, folder, steps).Then(lens => DigitiseAll(order, folder, lens, steps, stop).Then(ports =>
                Compare(folder, ports, steps, stop).Then(compared => Finish(order, folder, lens, ports, compared, steps)))));
    }

    private static Result<LensProfile> MakeLens(DemoOrder order, OutputFolder folder, StepCounter steps)
    {
        var photos = DemoScenario.LensPhotos.Select(name => Path.Combine(order.PhotosFolder, name)).ToList();
        return LensFiles.Make(photos, DemoScenario.PrintRatio, Path.Combine(folder.FullPath, LensName), new Passed(steps))
            .Then(made => made.LeftOut.Count > 0 ? made.LeftOut[0] : (Result<LensProfile>)made.Profile);
    }

    private static Result<IReadOnlyList<DigitisedPort>> DigitiseAll(
        DemoOrder order, OutputFolder folder, LensProfile lens, StepCounter steps, CancellationToken stop)
    {
        var ports = new List<DigitisedPort>();
        foreach (var port in DemoScenario.Ports)
        {
            if (!DigitisePhotos.Run(OrderFor(order, folder, lens, port), new Passed(steps), stop).TryGet(out var outcomes, out var problem))
            {
                return problem;
            }

            if (outcomes.FirstOrDefault(outcome => outcome.Problem is not null) is { } failed)
            {
                return failed.Problem!;
            }

            ports.Add(new(port, outcomes));
        }

        return ports;
    }

    private static DigitiseOrder OrderFor(DemoOrder order, OutputFolder folder, LensProfile lens, DemoPort port)
    {
        var settings = new DigitiseSettings
        {
            ThicknessMm = port.ThicknessMm,
            LooksForOpenings = port.ThicknessMm is null,
            Lens = lens,
            PrintRatio = DemoScenario.PrintRatio,
        };
        var words = new SortedDictionary<string, string>(StringComparer.Ordinal)
        {
            ["lens"] = LensName,
            ["print-ratio"] = FormattableString.Invariant($"{DemoScenario.PrintRatio.X},{DemoScenario.PrintRatio.Y}"),
            ["subject"] = port.ThicknessMm is null ? "opening" : "mould",
        };
        if (port.ThicknessMm is { } thickness)
        {
            words["thickness"] = FormattableString.Invariant($"{thickness}");
        }

        return new(
            [.. port.Photos.Select(name => Path.Combine(order.PhotosFolder, name))], settings, words, order.Program,
            Path.Combine(folder.FullPath, port.Folder), IsInch: false);
    }

    private static Result<ComparedPorts> Compare(
        OutputFolder folder, IReadOnlyList<DigitisedPort> ports, StepCounter steps, CancellationToken stop)
    {
        var exemplar = PortOf(ports, DemoScenario.Exemplar);
        var asCast = StationComparison.OfPorts(exemplar, PortOf(ports, DemoScenario.AsCast));
        var finished = StationComparison.OfPorts(exemplar, PortOf(ports, DemoScenario.Finished));
        stop.ThrowIfCancellationRequested();
        if (!OutputFolder.Open(Path.Combine(folder.FullPath, ComparisonsFolder)).TryGet(out var target, out var problem))
        {
            return problem;
        }

        foreach (var (port, comparisons) in new[] { (DemoScenario.AsCast, asCast), (DemoScenario.Finished, finished) })
        {
            foreach (var each in comparisons)
            {
                var drawing = each.Comparison.Draw(LengthUnit.Millimetre);
                var name = FormattableString.Invariant($"{port.Folder}.station-{each.Station}.svg");
                if (!target.Write(name, stream => SvgWriter.Write(drawing, stream)).TryGet(out _, out problem))
                {
                    return problem;
                }
            }
        }

        steps.Report("comparisons");
        return new ComparedPorts(asCast, finished);
    }

    private static Result<DemoOutcome> Finish(
        DemoOrder order, OutputFolder folder, LensProfile lens, IReadOnlyList<DigitisedPort> ports, ComparedPorts compared, StepCounter steps)
    {
        if (compared.Finished.Count == 0)
        {
            return DemoProblems.NoStations(order.PhotosFolder);
        }

        // The station that went farthest is the one that a porter would look up.
        var asked = compared.Finished.MaxBy(each => each.Result.Highest.DeviationMm)!;
        return DemoLibrary.Make(folder, ports, asked.Measured, order.Time).Then(library =>
        {
            steps.Report("library");
            var outcome = new DemoOutcome(
                Path.Combine(folder.FullPath, PageName), library.Path, lens, ports, compared.AsCast, compared.Finished);
            return WritePage(order, folder, outcome, new(asked, library.Found), steps);
        });
    }

    private static Result<DemoOutcome> WritePage(
        DemoOrder order, OutputFolder folder, DemoOutcome outcome, LibraryAnswer answer, StepCounter steps)
    {
        var page = new DemoPage(outcome, answer, order.Program).Build();
        return folder.Write(PageName, stream => SummaryWriter.Write(page, stream)).Then<DemoOutcome>(_ =>
        {
            steps.Report(PageName);
            return outcome;
        });
    }

    private static DigitisedPort PortOf(IReadOnlyList<DigitisedPort> ports, DemoPort port) => ports.First(each => each.Port == port);

    private sealed record ComparedPorts(IReadOnlyList<StationComparison> AsCast, IReadOnlyList<StationComparison> Finished);

    /// <summary>Lets the parts of the demonstration count toward the whole.</summary>
    private sealed class Passed(StepCounter steps) : IProgress<JobProgress>
    {
        public void Report(JobProgress value) => steps.Report(value.What);
    }
}
