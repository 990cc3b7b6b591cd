using SectionScan.Drawings.Sections;
using SectionScan.Jobs.WholeJobs;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Proof;
using SectionScan.Porting.Sections;
using SectionScan.Testing.Shapes;

namespace SectionScan.Jobs.Tests.WholeJobs;

/// <summary>A job of round ports, whose depths, verdicts and steps are differences of radii.</summary>
public sealed class RunJobTests : IDisposable
{
    private readonly ResultFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Plan_proof_and_joint_are_made_and_shown_in_the_report()
    {
        var run = RunJob.Run(new(Write(Asked), folder.PathOf("out"), "test")).ValueOrThrow();

        // From 15 to 15.5 mm; 0.3 mm are left for finishing. Station 2 is at 16 mm already: 0.5 mm too far.
        var work = run.Outcome.Work;
        var cuts = work.Plans[0].Plan.Stations;
        Assert.Equal(0.5, cuts[0].Cut.Places.Average(place => place.AtFinishMm), 0.02);
        Assert.Equal(0.2, cuts[0].Cut.Places.Average(place => place.NowMm), 0.02);
        Assert.Equal([Verdict.Conforms, Verdict.DoesNotConform], work.Proofs[0].Sections.Select(section => section.Proof.Verdict));
        Assert.Equal(0.5, work.Proofs[0].Sections[1].Proof.Highest.DeviationMm, 0.02);

        // A flange of 15.3 mm before a port of 15 mm: the port's edge faces the flow all round.
        Assert.Equal(0.3, work.Joints[0].Match.Openings[0].Highest.DeviationMm, 0.02);
        Assert.True(work.Joints[0].Match.IsCutNeeded);

        var html = File.ReadAllText(run.HtmlPath);
        foreach (var words in new[] { "Cut plan: own to exemplar", "Proof: own against exemplar", "station 2 does not conform", "faces the flow", "Order of work", "pressure-test", "The joint at its best place" })
        {
            Assert.Contains(words, html, StringComparison.Ordinal);
        }

        Assert.Contains(run.Record.Results.Keys, name => name.EndsWith(".template-port.dxf", StringComparison.Ordinal));
        Assert.Contains(run.Record.Results.Keys, name => name.Contains("cut-plan", StringComparison.Ordinal));
    }

    [Fact]
    public void In_inches_the_report_shows_inches_and_the_documents_stay_in_millimetres()
    {
        var path = Write(Asked);

        var metric = RunJob.Run(new(path, folder.PathOf("mm"), "test")).ValueOrThrow();
        var inch = RunJob.Run(new(path, folder.PathOf("in"), "test") { Unit = LengthUnit.Inch }).ValueOrThrow();

        // A circle of 15 mm: π·225 mm² = 706.86 mm² = 1.0956 in².
        Assert.Contains("706.", File.ReadAllText(metric.HtmlPath), StringComparison.Ordinal);
        Assert.Contains("1.095", File.ReadAllText(inch.HtmlPath), StringComparison.Ordinal);
        Assert.Contains("Area, in²", File.ReadAllText(inch.HtmlPath), StringComparison.Ordinal);
        Assert.Equal(metric.Record.Results["own/own.port.json"], inch.Record.Results["own/own.port.json"]);
        Assert.Equal(metric.Record.Results["own/own.schedule.csv"], inch.Record.Results["own/own.schedule.csv"]);
    }

    [Theory]
    [InlineData("\"joints\": [{\"port\": \"own\", \"manifold\": [\"flange.csv\"], \"opening\": 2}]", "job-joint-opening")]
    [InlineData("\"joints\": [{\"port\": \"own\", \"manifold\": [\"flange.csv\"], \"station\": 9}]", "job-joint-station")]
    [InlineData("\"joints\": [{\"port\": \"own\", \"manifold\": []}]", "job-field-unusable")]
    [InlineData("\"plans\": [{\"port\": \"own\", \"toward\": \"targets\"}]", "job-port-unknown")]
    [InlineData("\"proofs\": [{\"port\": \"own\", \"against\": \"exemplar\", \"outsideMm\": -1}]", "job-field-unusable")]
    public void Work_that_cannot_be_done_is_refused_by_name(string work, string code)
    {
        Assert.False(RunJob.Run(new(Write(work), folder.PathOf("out"), "test")).TryGet(out _, out var problem));

        Assert.Equal(code, problem.Code);
        Assert.False(File.Exists(folder.PathOf(Path.Combine("out", "ports.report.html"))));
    }

    private const string Asked = """
        "comparisons": [{"port": "own", "with": "exemplar"}],
        "plans": [{"port": "own", "toward": "exemplar", "allowanceMm": 0.3}],
        "proofs": [{"port": "own", "against": "exemplar", "insideMm": 0.7, "outsideMm": 0.1}],
        "joints": [{"port": "own", "manifold": ["flange.csv"]}]
        """;

    private string Write(string work)
    {
        using (var stream = File.Create(folder.PathOf("flange.csv")))
        {
            OutlineCsv.Write(AnalyticShapes.Circle(15.3), stream);
        }

        var job = $$"""
            {"schema": "sectionscan/job/1", "head": "Bramble 480 twin", "name": "ports", {{work}},
             "ports": [{{Port("own", 15, 16)}}, {{Port("exemplar", 15.5, 15.5)}}]}
            """;
        File.WriteAllText(folder.PathOf("a.job.json"), job);
        return folder.PathOf("a.job.json");
    }

    private string Port(string name, params double[] radii)
    {
        for (var i = 0; i < radii.Length; i++)
        {
            var section = new Section(
                i + 1, SectionSubject.Mould, 6, AnalyticShapes.Circle(radii[i]), [new OutlineErrorSource("edge, systematic", [new NormalOffsetEffect(0.01)])], []);
            File.WriteAllText(
                folder.PathOf(FormattableString.Invariant($"{name}-{i + 1}.section.json")),
                SectionDocumentFormat.Write(new(section, null, [], null, null, null, new Dictionary<string, string>(), "test")));
        }

        return $$"""
            {"name": "{{name}}", "kind": "intake", "sections": ["{{name}}-1.section.json", "{{name}}-2.section.json"],
             "stations": [{"station": 1, "distanceMm": 0}, {"station": 2, "distanceMm": 30}]}
            """;
    }
}
