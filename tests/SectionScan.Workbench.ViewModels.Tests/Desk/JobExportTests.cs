using SectionScan.Jobs.PortingJobs;
using SectionScan.Jobs.WholeJobs;
using SectionScan.Metrology.Measures;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Walls;
using SectionScan.Workbench.ViewModels.Desk;
using SectionScan.Workbench.ViewModels.Places;
using SectionScan.Workbench.ViewModels.Tests.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Desk;

/// <summary>A job of the workbench, written as a job document and run by what <c>sectionscan job run</c> runs.</summary>
public sealed class JobExportTests : IDisposable
{
    private readonly Shop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public void Running_the_document_gives_the_numbers_of_the_workbench()
    {
        var window = SamplePort.WithTarget(shop);
        var live = window.Live!;
        var walls = new PortWalls([(4, new("oil drain", new KeepOutCircle(new(26, 4), 3.5), 0.3, 2.5, KeepOutSource.Drawing, string.Empty))], []);
        live.Do("Set up", job => job with
        {
            PortData = SampleJob.Begun.PortData,
            WallsFile = JobWalls.Keep(live.Folder, walls).ValueOrThrow(),
            Cut = job.Cut with { AllowanceMm = 0.6 },
            Proof = job.Proof with { Finished = JobPorts.KeyOf("finished"), InsideMm = 0.3 },
            Comparison = job.Comparison with { FirstPort = JobPorts.KeyOf("exemplar"), SecondPort = JobPorts.KeyOf("finished") },
        });
        var bench = new JobBenches(shop.Desk).Of(live)!;
        var targets = bench.Targets()!.ValueOrThrow();

        var files = JobExport.Write(live.Folder, live.Job, targets, Path.Combine(shop.Folder, "taken-away")).ValueOrThrow();
        var run = RunJob.Run(new(files[0], Path.Combine(shop.Folder, "results"), "sectionscan test")).ValueOrThrow().Outcome;

        Assert.Equal(["as cast", "exemplar", "finished"], run.Ports.Select(port => port.Plan.Name).Order(StringComparer.Ordinal));
        Assert.Equal("as cast", run.Ports[0].Plan.Name);
        var sections = live.Job.Sections.Where(each => live.Job.StageOf(each) == "as cast").OrderBy(each => each.Station).ToList();
        Assert.Equal(
            sections.Select(each => live.Measured(each).ValueOrThrow().Measures[MeasureCatalogue.Area].Estimate),
            run.Ports[0].Sections.Select(each => each.Measured[MeasureCatalogue.Area].Estimate));
        var study = JobStudy.Of("own", [.. sections.Select(each => live.Measured(each).ValueOrThrow().Document.Section)], live.Job.PortData).ValueOrThrow();
        Assert.Equal(study.Schedule.Schedule.Stations.Select(each => each.AreaMm2), run.Ports[0].Schedule.Schedule.Stations.Select(each => each.AreaMm2));
        Assert.NotNull(run.Ports[0].GasSpeed);

        var plan = bench.Plan(isInch: false)!.ValueOrThrow();
        var planned = Assert.Single(run.Work.Plans).Plan;
        Assert.Equal(0.6, planned.Order.AllowanceMm);
        Assert.Equal(plan.SummaryRows().Select(row => string.Join(" | ", row)), planned.SummaryRows().Select(row => string.Join(" | ", row)));
        Assert.Equal("oil drain", Assert.Single(planned.Stations[3].Cut.Walls.Select(each => each.KeepOut.Name).Distinct()));
        Assert.Equal(
            plan.Stations[3].Cut.Walls.Select(each => Math.Round(each.WallMm.Value, 4)), planned.Stations[3].Cut.Walls.Select(each => Math.Round(each.WallMm.Value, 4)));

        var proof = bench.Proof()!.ValueOrThrow();
        var proved = Assert.Single(run.Work.Proofs);
        Assert.Equal(0.3, proved.Asked.InsideMm);
        Assert.Equal(proof.Proved.Select(each => each.Proof.Verdict), proved.Sections.Select(each => each.Proof.Verdict));
        Assert.Equal(
            proof.Proved.Select(each => Math.Round(each.Proof.Highest.DeviationMm, 6)), proved.Sections.Select(each => Math.Round(each.Proof.Highest.DeviationMm, 6)));
        Assert.Equal(2, run.Comparisons.Count);
    }

    [Fact]
    public void An_alignment_by_hand_stands_in_the_document_and_in_the_report_of_its_run_with_its_uncertainty()
    {
        var window = SamplePort.WithTarget(shop);
        using var compare = new CompareViewModel(window, shop.Desk);
        string Section(string name) => window.Job.Sections.Single(each => window.Job.NameOf(each) == name).Id;
        window.Live!.Do("Set up", job => job with { PortData = SampleJob.Begun.PortData });
        compare.ChooseReference(Section("exemplar, station 4"));
        compare.ChooseMeasured(Section("finished, station 4"));
        var before = compare.Comparison!.ValueOrThrow().DeviationExpandedUncertaintyMm;
        compare.SetHand(new(0.4, -0.2, 1.5));
        var shown = compare.Comparison!.ValueOrThrow();
        Assert.True(shown.DeviationExpandedUncertaintyMm > before);

        var files = JobExport.Write(window.Live.Folder, window.Job, null, Path.Combine(shop.Folder, "taken-away")).ValueOrThrow();
        var run = RunJob.Run(new(files[0], Path.Combine(shop.Folder, "results"), "sectionscan test")).ValueOrThrow();

        var compared = run.Outcome.Comparisons.Single(each => each.Measured.Plan.Name == "finished" && each.Reference.Plan.Name == "exemplar");
        var station = compared.Stations.Single(each => each.Station == 4);
        Assert.Equal(shown.Result.Highest.DeviationMm, station.Result.Highest.DeviationMm, 1e-6);
        Assert.Equal(shown.DeviationExpandedUncertaintyMm, station.DeviationExpandedUncertaintyMm, 1e-6);
        Assert.All(compared.Stations.Where(each => each.Station != 4), each => Assert.True(each.Comparison.Alignment.ByHand.IsNone));
        var report = System.Net.WebUtility.HtmlDecode(File.ReadAllText(run.HtmlPath));
        Assert.Contains("Station 4 was aligned by hand:", report, StringComparison.Ordinal);
        Assert.Contains("x +0.40 mm, y −0.20 mm, turned +1.50°", report, StringComparison.Ordinal);
    }

    [Fact]
    public void An_alignment_by_hand_that_a_document_cannot_tell_is_left_out_and_named()
    {
        var window = SamplePort.WithTarget(shop);
        using var compare = new CompareViewModel(window, shop.Desk);
        window.Live!.Do("Set up", job => job with { PortData = SampleJob.Begun.PortData });
        compare.ChooseReference(window.Job.Sections[0].Id);
        compare.ChooseMeasured(window.Job.Sections[1].Id);
        compare.SetHand(new(0.4, 0, 0));

        var files = JobExport.Write(window.Live.Folder, window.Job, null, Path.Combine(shop.Folder, "taken-away")).ValueOrThrow();

        var document = JobDocumentFormat.Read(File.ReadAllText(files[0]), files[0]).ValueOrThrow();
        Assert.All(document.Comparisons, each => Assert.Null(each.ByHand));
        Assert.Contains(document.Notes, note => note.StartsWith("The alignment by hand is left out", StringComparison.Ordinal));
    }

    [Fact]
    public void A_proof_that_a_document_cannot_tell_is_left_out_and_named()
    {
        var window = SamplePort.WithTarget(shop);
        window.Live!.Do("Set up", job => job with
        {
            PortData = SampleJob.Begun.PortData,
            Proof = job.Proof with { Finished = JobPorts.KeyOf("finished"), Target = JobPorts.KeyOf("exemplar"), OtherMm = 0.05 },
        });

        var files = JobExport.Write(window.Live.Folder, window.Job, null, Path.Combine(shop.Folder, "taken-away")).ValueOrThrow();

        var document = JobDocumentFormat.Read(File.ReadAllText(files[0]), files[0]).ValueOrThrow();
        Assert.Empty(document.Proofs);
        Assert.Contains(document.Notes, note => note.StartsWith("The proof is left out", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_the_stations_places_there_is_no_document_and_the_remedy_is_told()
    {
        var window = SamplePort.WithTarget(shop);

        Assert.False(JobExport.IsReady(window.Job));
        Assert.False(JobExport.Write(window.Live!.Folder, window.Job, null, Path.Combine(shop.Folder, "taken-away")).TryGet(out _, out var problem));
        Assert.Equal("job-without-stations", problem.Code);
        Assert.False(Directory.Exists(Path.Combine(shop.Folder, "taken-away")));
    }
}
